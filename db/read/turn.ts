import { type AnyColumn, and, asc, desc, gt, lt, type SQL } from 'drizzle-orm'

/** How many lines a page of a long list has. */
export const pageLines = 100

/** Which page of a list that has its newest line first: the lines older than one of them, or those newer; the newest of all when both are null. */
export interface Turn {
  readonly before: number | null
  readonly after: number | null
}

/** One page of a list, and whether there is one before it and one after it. */
export interface Turned<Row> {
  readonly rows: readonly Row[]
  readonly previous: boolean
  readonly next: boolean
}

interface Ask {
  readonly where: SQL | undefined
  readonly orderBy: SQL
  readonly limit: number
}

/** The page that `turn` asks for of what `select` finds; `kept` is the condition every line of the list meets. */
export function turned<Row extends { readonly id: number }>(
  id: AnyColumn,
  { before, after }: Turn,
  kept: SQL | undefined,
  select: (ask: Ask) => Row[],
): Turned<Row> {
  const older = (than: number) => ({ where: and(kept, lt(id, than)), orderBy: desc(id) })
  const newer = (than: number) => ({ where: and(kept, gt(id, than)), orderBy: asc(id) })
  const asked =
    after !== null ? newer(after) : before !== null ? older(before) : { where: kept, orderBy: desc(id) }
  const rows = select({ ...asked, limit: pageLines }).sort((a, b) => b.id - a.id)
  const [first, last] = [rows.at(0), rows.at(-1)]
  return {
    rows,
    previous: first !== undefined && select({ ...newer(first.id), limit: 1 }).length > 0,
    next: last !== undefined && select({ ...older(last.id), limit: 1 }).length > 0,
  }
}
