import { sql } from 'drizzle-orm'
import { type Check, fault } from './check.ts'

/** The file as SQLite sees it: every page and index in order, every reference pointing to something. */
export const file: Check = function* ({ read }) {
  const said = read.all<{ integrity_check: string }>(sql`PRAGMA integrity_check`)
  for (const { integrity_check: what } of said) if (what !== 'ok') yield fault('file.damaged', { what })
  const broken = read.all<{ table: string; rowid: number | null; parent: string }>(
    sql`PRAGMA foreign_key_check`,
  )
  for (const { table, rowid, parent } of broken)
    yield fault('file.reference', { table, row: rowid ?? '?', parent })
  return read.get<{ pages: number }>(sql`SELECT page_count AS pages FROM pragma_page_count`)?.pages ?? 0
}
