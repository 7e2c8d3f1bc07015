/** A process of its own that judges the mutants of some files and tells its parent what it found. */
import { join } from 'node:path'
import fc from 'fast-check'
import { importsBelow } from './imports.ts'
import { fails, knownTests, type MutantsOfFile, type Runnable } from './known-tests.ts'
import { takeOver } from './loader.ts'
import { switchTo } from './switch.ts'
import { type Mutant, switched } from './switched.ts'

/** What a judge is given. */
export interface Case {
  readonly files: readonly string[]
  readonly testFiles: readonly string[]
  /** Numbers of mutants that another judge came to an end with. */
  readonly judged: readonly number[]
  /** Lines that alone are looked at; none for all. */
  readonly lines: readonly number[]
  /** How many tests are asked about one mutant at most. */
  readonly mostTests: number
}

/** What a judge says. */
export type Said =
  | {
      readonly said: 'tests'
      readonly mutants: number
      readonly count: number
      readonly leftOut: readonly string[]
    }
  | { readonly said: 'begins'; readonly mutant: Mutant }
  | { readonly said: 'judged'; readonly killed: boolean; readonly unreached: boolean }

const root = join(import.meta.dirname, '../..')
const say = (said: Said) => process.send?.(said)
const { files, testFiles, judged, lines, mostTests } = JSON.parse(process.argv[2] ?? '') as Case

const texts = new Map<string, string>()
const mutants: Mutant[] = []
const numbers = new Map<string, MutantsOfFile>()
for (const file of files) {
  const { text, mutants: found } = switched(root, file, mutants.length)
  texts.set(file, text)
  numbers.set(file, { first: mutants.length, last: mutants.length + found.length - 1 })
  mutants.push(...found)
}

const mutantsOf = (file: string): MutantsOfFile => numbers.get(file) ?? { first: 0, last: -1 }

takeOver(root, path => texts.get(path))
fc.configureGlobal({ seed: 20_270_301, endOnFailure: true })
const tests = await knownTests(root, testFiles, importsBelow(root), mutantsOf)
say({ said: 'tests', mutants: mutants.length, count: tests.count, leftOut: tests.leftOut })

// What the program says of a mutant's mistakes is of no interest.
console.error = () => undefined

/** The tests that noticed a mutant of a file so far, the last first: they may notice the next one as well. */
const noticed = new Map<string, readonly Runnable[]>()

/** Asks the tests near a mutant, one after another until one fails; how many were asked, and whether one did. */
async function verdict(mutant: Mutant): Promise<{ asked: number; killed: boolean }> {
  const before = noticed.get(mutant.file) ?? []
  let asked = 0
  for await (const one of tests.of(mutant, before)) {
    if (asked === mostTests) break
    asked += 1
    // A loop that a mutant keeps from ending goes many times the steps.
    switchTo(mutant.id, one.steps * 30 + 100_000)
    if (await fails(one.test)) {
      noticed.set(mutant.file, [one, ...before.filter(({ name }) => name !== one.name)].slice(0, 5))
      return { asked, killed: true }
    }
  }
  return { asked, killed: false }
}

const isAsked = ({ id, line }: Mutant) => !judged.includes(id) && (lines.length === 0 || lines.includes(line))
for (const mutant of mutants.filter(isAsked)) {
  say({ said: 'begins', mutant })
  const { asked, killed } = await verdict(mutant)
  switchTo(-1)
  say({ said: 'judged', killed, unreached: asked === 0 })
}
process.exit(0)
