import { closeSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
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
