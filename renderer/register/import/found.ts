import type { CheckedLine } from './use-check.ts'

type GoodLine = Extract<CheckedLine, { row: unknown }>
type BadLine = Extract<CheckedLine, { problems: unknown }>

/** Whom a line is taken for: an owner on record by number, or null for somebody else. */
export type Taken = Readonly<Record<number, number | null>>

const isGood = (line: CheckedLine): line is GoodLine => 'row' in line

/** What the check found, sorted by what a person has to do about it. */
export function found(lines: readonly CheckedLine[]) {
  const good = lines.filter(isGood)
  const nothingNew = ({ row, standing }: GoodLine) =>
    standing.ownerKnown && (row.clock === null || standing.clockKnown)
  return {
    bad: lines.filter((line): line is BadLine => !isGood(line)),
    fresh: good.filter(line => !nothingNew(line)),
    known: good.filter(nothingNew),
    likely: good.filter(({ standing }) => standing.likely.length > 0),
  }
}

/** Whom a line is taken for: what was chosen, otherwise the owner on record with the same telephone or e-mail. */
export const takenFor = ({ line, standing }: GoodLine, taken: Taken): number | null => {
  const chosen = taken[line]
  return chosen === undefined ? (standing.likely.find(one => one.why === 'contact')?.id ?? null) : chosen
}

/** The rows that are entered: every good one, so that a clock finds its owner wherever that stands in the file. */
export const rowsToEnter = (lines: readonly CheckedLine[], taken: Taken) =>
  lines.filter(isGood).map(line => ({ ...line.row, sameAs: takenFor(line, taken) }))

export type { BadLine, GoodLine }
