import { closeSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
import { setImmediate as breath } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { LedgerRefused } from './ledger-refused.ts'

/** What was written at `path`, a file or a folder, is on disk when this returns. */
export function syncPath(path: string): void {
  const handle = openSync(path, 'r')
  try {
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}

/**
 * A sound copy of the open ledger at `target`: written beside it, synced, opened again and checked, then renamed, so that a
 * file of that name is always a whole one. The same connection writes it, for closing a second handle on the ledger's file
 * would drop this process's locks on it.
 */
export function backUp(db: Database.Database, target: string): void {
  const unfinished = `${target}.unfinished`
  rmSync(unfinished, { force: true })
  db.prepare('VACUUM INTO ?').run(unfinished)
  syncPath(unfinished)
  const copy = new Database(unfinished, { readonly: true })
  const sound = copy.pragma('quick_check', { simple: true }) === 'ok'
  copy.close()
  if (!sound) throw new LedgerRefused('ledger.damaged')
  renameSync(unfinished, target)
  syncPath(dirname(target))
}

/** So many pages are copied before whoever waits is answered: well under a millisecond's work. */
const pagesAStep = 32

/** Leaves a file that keeps no log, as `VACUUM INTO` does. */
function withoutLog(path: string): void {
  const copy = new Database(path)
  copy.pragma('journal_mode = DELETE')
  copy.close()
}

/** Checks a copy table by table, between other work. */
async function checkInSteps(copy: Database.Database): Promise<void> {
  const tables = copy.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all() as string[]
  for (const table of tables) {
    await breath()
    const found = copy.pragma(`quick_check("${table}")`, { simple: true })
    if (found !== 'ok') throw new LedgerRefused('ledger.damaged')
  }
}

/**
 * As `backUp`, by SQLite's online backup on the ledger's own connection: acts go on meanwhile, and what they write is in the copy.
 * Rejects where the ledger is closed before it is done.
 */
export async function backUpInSteps(db: Database.Database, target: string): Promise<void> {
  const unfinished = `${target}.unfinished`
  rmSync(unfinished, { force: true })
  await db.backup(unfinished, { progress: () => pagesAStep })
  withoutLog(unfinished)
  // Read-only: the same check was measured to take a quarter of the time it takes on a handle that may write.
  const copy = new Database(unfinished, { readonly: true })
  try {
    await checkInSteps(copy)
  } finally {
    copy.close()
  }
  renameSync(unfinished, target)
}
