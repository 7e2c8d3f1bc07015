import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type Database from 'better-sqlite3'
import { readHead } from './head.ts'
import { judge } from './judge.ts'
import { type Ledger, type OpenOptions, openLedger } from './ledger.ts'
import { LedgerRefused } from './ledger-refused.ts'
import { type MissingEntries, missingEntries } from './missing.ts'

/** A copy of a ledger, and the entries that were acknowledged and are not in it. */
export interface Untouched extends Ledger {
  readonly missing: MissingEntries | null
}

/**
 * Opens a copy of the ledger, made in the computer's folder for passing files and taken away on closing: whatever is done
 * with it, not a byte of the file or beside it changes. No other process may have the ledger open. Throws LedgerRefused.
 */
export function openUntouched(file: string, options: OpenOptions): Untouched {
  const known = readHead(file)
  let missing: MissingEntries | null = null
  const look = (db: Database.Database) => {
    missing = known ? missingEntries(db, known) : null
  }
  if (judge(file, known, look) === 'new') throw new LedgerRefused('ledger.foreign')
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-copy-'))
  const remove = () => rmSync(folder, { recursive: true, force: true })
  try {
    const ledger = openLedger(copied(file, folder), { ...options, passing: true })
    const close = () => {
      ledger.close()
      remove()
    }
    return { ...ledger, missing, close }
  } catch (error) {
    remove()
    throw error
  }
}

/** The copy, with what a killed process left in the log beside the file. */
function copied(file: string, folder: string): string {
  const copy = join(folder, 'copy.countwheel')
  for (const ending of ['', '-wal'])
    if (existsSync(`${file}${ending}`)) copyFileSync(`${file}${ending}`, `${copy}${ending}`)
  return copy
}
