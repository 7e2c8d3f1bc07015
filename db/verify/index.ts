import { type Check, type Examined, type Fault, fault, type Note } from './check.ts'
import { copy } from './copy.ts'
import { dayBook } from './day-book.ts'
import { derived } from './derived.ts'
import { estimates } from './estimates.ts'
import { file } from './file.ts'
import { handedPapers } from './handed-papers.ts'
import { keptPapers } from './kept-papers.ts'
import { money } from './money.ts'
import { numbers } from './numbers.ts'
import { papers } from './papers.ts'
import { photographs } from './photographs.ts'
import { shape } from './shape.ts'

/** Every check, in the order they are made. A new one is one file here and one entry. */
export const checks = {
  file,
  copy,
  shape,
  dayBook,
  numbers,
  papers,
  handedPapers,
  estimates,
  derived,
  money,
  photographs,
  keptPapers,
} satisfies Record<string, Check>

export type CheckName = keyof typeof checks

/** What one check looked at and what it found wrong. */
export interface Checked {
  readonly name: CheckName
  readonly looked: number
  readonly faults: readonly Fault[]
  /** What is in order and should be known. */
  readonly notes: readonly Fault[]
}

const mostFaults = 1000

const isNote = (found: Fault): found is Note => 'note' in found

/** Runs one check; what keeps it from going on is a fault itself. Beyond a thousand faults it stops. */
function checked(name: CheckName, examined: Examined): Checked {
  const faults: Fault[] = []
  const notes: Fault[] = []
  let looked = 0
  try {
    const run = checks[name](examined)
    for (let step = run.next(); ; step = run.next()) {
      if (step.done) looked = step.value
      else (isNote(step.value) ? notes : faults).push(step.value)
      if (step.done || faults.length >= mostFaults) break
    }
  } catch (error) {
    faults.push(fault('check.stopped', { reason: error instanceof Error ? error.message : String(error) }))
  }
  return { name, looked, faults, notes }
}

/** Makes every check on the ledger, one after the other. */
export function* verified(examined: Examined): Generator<Checked> {
  for (const name of Object.keys(checks) as CheckName[]) yield checked(name, examined)
}
