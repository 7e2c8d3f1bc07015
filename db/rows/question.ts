import { type SQL, sql } from 'drizzle-orm'
import type { SQLiteColumn } from 'drizzle-orm/sqlite-core'
import type { Read } from '../file/ledger.ts'

/**
 * A question that is asked over and over: its SQL is put together once for each handle, for that costs more than the answer.
 * `askedId` and `amongAsked` stand in it for what it is asked with: `.all({ id })`, `.all(these(ids))`.
 */
export function question<Q extends { prepare(): object }>(
  ask: (read: Read) => Q,
): (read: Read) => ReturnType<Q['prepare']> {
  const prepared = new WeakMap<Read, ReturnType<Q['prepare']>>()
  return read => {
    const known = prepared.get(read)
    if (known) return known
    const fresh = ask(read).prepare() as ReturnType<Q['prepare']>
    prepared.set(read, fresh)
    return fresh
  }
}

/** The number that a question is asked with. */
export const askedId = sql.placeholder('id')

/** True where the column is one of the numbers that a question is asked with. */
export const amongAsked = (column: SQLiteColumn): SQL =>
  sql`${column} IN (SELECT value FROM json_each(${sql.placeholder('ids')}))`

/** The numbers to ask `amongAsked` with. */
export const these = (ids: readonly number[]): { ids: string } => ({ ids: JSON.stringify(ids) })
