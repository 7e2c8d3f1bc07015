import type { InferResponseType } from 'hono/client'
import { useRef, useState } from 'react'
import type { Mapping } from '../../../core/import/fields.ts'
import { type ImportedRow, importedRow } from '../../../core/import/rows.ts'
import { problemText } from '../../../core/words/problem-text.ts'
import { answer, api, type ShownProblem } from '../../api.ts'
import { useShop } from '../../shop.tsx'
import type { FileLine } from './read-file.ts'

type Standing = InferResponseType<typeof api.register.importCheck.$post>['lines'][number]

/** A line that was checked: what is wrong with it, or the row it makes and how that stands to what is on record. */
export type CheckedLine =
  | { readonly line: number; readonly problems: readonly ShownProblem[] }
  | { readonly line: number; readonly row: ImportedRow; readonly standing: Standing }

/** How far the check is, or what it found. */
export type Check =
  | { readonly state: 'none' | 'stopped' }
  | { readonly state: 'running'; readonly done: number; readonly of: number }
  | { readonly state: 'done'; readonly lines: readonly CheckedLine[] }

/** How the lines of a file are read. */
export interface Reading {
  readonly mapping: Mapping
  /** Telephones that are no numbers are kept as they are written. */
  readonly phonesAsWritten: boolean
}

/** Lines checked at a time: after each the page shows how far it is and can be stopped. */
const atATime = 500

/** Checks every line of a file against the rules and the ledger, a few hundred at a time. */
export function useCheck() {
  const { words } = useShop()
  const [check, setCheck] = useState<Check>({ state: 'none' })
  const run = useRef(0)
  const read = (
    { line, cells }: FileLine,
    { mapping, phonesAsWritten }: Reading,
  ): CheckedLine | ImportedRow => {
    const row = importedRow(cells, line, mapping, words, phonesAsWritten)
    if (row.ok) return row.value
    return { line, problems: row.problems.map(one => ({ ...one, message: problemText(words, one) })) }
  }
  const start = async (lines: readonly FileLine[], reading: Reading) => {
    const mine = ++run.current
    const checked: CheckedLine[] = []
    for (let from = 0; from < lines.length; from += atATime) {
      setCheck({ state: 'running', done: from, of: lines.length })
      const read_ = lines.slice(from, from + atATime).map(line => read(line, reading))
      checked.push(...(await stood(read_)))
      if (run.current !== mine) return
    }
    setCheck({ state: 'done', lines: checked })
  }
  return {
    check,
    start: (lines: readonly FileLine[], reading: Reading) =>
      start(lines, reading).catch((error: unknown) => {
        setCheck({ state: 'none' })
        throw error
      }),
    /** Ends a check that runs. */
    stop: () => {
      run.current += 1
      setCheck({ state: 'stopped' })
    },
    /** Forgets what was found, as when the file or its columns are changed. */
    reset: () => {
      run.current += 1
      setCheck({ state: 'none' })
    },
  }
}

const isRow = (one: CheckedLine | ImportedRow): one is ImportedRow => 'owner' in one

/** What the ledger says to the rows among them; in the order they were given. */
async function stood(lines: readonly (CheckedLine | ImportedRow)[]): Promise<CheckedLine[]> {
  const rows = lines.filter(isRow)
  const json = { rows: rows.map(row => ({ ...row })) }
  const told = rows.length > 0 ? (await answer(api.register.importCheck.$post({ json }))).lines : []
  const standings = new Map(told.map(one => [one.line, one]))
  return lines.map(one => {
    if (!isRow(one)) return one
    const standing = standings.get(one.line)
    return !standing || standing.problems.length > 0
      ? { line: one.line, problems: standing?.problems ?? [] }
      : { line: one.line, row: one, standing }
  })
}
