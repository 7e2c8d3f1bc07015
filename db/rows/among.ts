import { type SQL, sql } from 'drizzle-orm'
import type { SQLiteColumn } from 'drizzle-orm/sqlite-core'

/** True where the column is one of `ids`: one parameter however many there are, so that the statement stays the same. */
export const among = (column: SQLiteColumn, ids: readonly number[]): SQL =>
  sql`${column} IN (SELECT value FROM json_each(${JSON.stringify(ids)}))`
