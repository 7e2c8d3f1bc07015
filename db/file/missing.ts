import type Database from 'better-sqlite3'
import type { Tail } from './head.ts'

/** Entries that were acknowledged and do not stand in the ledger. */
export interface MissingEntries {
  /** How many; null where the ledger went on another way, so that nobody can count them. */
  readonly count: number | null
  /** The last entry before them that is there, ISO instant; '' where none is. */
  readonly from: string
  /** The last of those missing. */
  readonly to: string
}

/** What the chain begins with, where nothing has been entered. */
const nothingYet: Tail = { count: 0, hash: '0'.repeat(64), at: '' }

/** The last row of the day book in an open file. */
export const tailOf = (db: Database.Database): Tail =>
  db.prepare<[], Tail>('SELECT id AS count, hash, at FROM day_book ORDER BY id DESC LIMIT 1').get() ??
  nothingYet

/** True where the row of that number is the very one that was known. */
function hasRow(db: Database.Database, { count, hash }: Tail): boolean {
  if (count === 0) return true
  return (
    db.prepare<[number], { hash: string }>('SELECT hash FROM day_book WHERE id = ?').get(count)?.hash === hash
  )
}

/** What of what was known stands no longer in an open file; null where all of it does. */
export function missingEntries(db: Database.Database, known: Tail): MissingEntries | null {
  if (hasRow(db, known)) return null
  const last = tailOf(db)
  return { count: known.count > last.count ? known.count - last.count : null, from: last.at, to: known.at }
}
