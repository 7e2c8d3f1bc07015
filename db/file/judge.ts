import { constants, copyFileSync, existsSync, mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import type { Head } from './head.ts'
import { applicationId, checkHeader, isCutShort, keepsALog } from './header.ts'
import { identityIn } from './identity.ts'
import { LedgerRefused } from './ledger-refused.ts'

/** Where SQLite keeps what is not yet in the file itself: the log that a closed ledger does not have. */
export const logOf = (file: string): string => `${file}-wal`

/** SQLite's own head of a log; what has no more than that has no entry. */
const emptyLogBytes = 32

/** True where a log with something in it stands beside the file: its program did not close it. */
export const hasLog = (file: string): boolean =>
  (statSync(logOf(file), { throwIfNoEntry: false })?.size ?? 0) > emptyLogBytes

/** Calls `look` with a copy of the file and its log in the computer's folder for passing files, and takes the copy away again. */
export function onCopy<T>(file: string, look: (copy: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-copy-'))
  try {
    const copy = join(folder, 'copy.countwheel')
    for (const path of [file, logOf(file)])
      if (statSync(path, { throwIfNoEntry: false }))
        copyFileSync(path, path === file ? copy : logOf(copy), constants.COPYFILE_FICLONE)
    return look(copy)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

const isDamage = (error: unknown) =>
  error instanceof Database.SqliteError &&
  (error.code.startsWith('SQLITE_CORRUPT') || error.code === 'SQLITE_NOTADB')

/** Looks into an open file once it is known to be a ledger; throws what speaks against it. */
export type Look = (db: Database.Database) => void

/** Lets SQLite bring the log into the file and looks whether what comes of it is one ledger. */
function judgeRecovered(copy: string, known: Head | undefined, look: Look): void {
  const db = new Database(copy)
  try {
    if (db.pragma('application_id', { simple: true }) !== applicationId)
      throw new LedgerRefused('ledger.foreign')
    const own = identityIn(db)
    // Which opening a file was opened by is never in the log, save for a moment: it tells what the log was written for.
    const belongs = !own || !known ? isWhole(db) : [known.opening, known.next].includes(own.opening)
    if (!belongs) throw new LedgerRefused('ledger.foreignLog')
    look(db)
  } finally {
    db.close()
  }
  if (isCutShort(copy)) throw new LedgerRefused('ledger.damaged')
}

/** SQLite's whole check, which a log of another file does not pass. */
const isWhole = (db: Database.Database): boolean => db.pragma('integrity_check', { simple: true }) === 'ok'

/** True where the file by itself, without its log, is a whole ledger: then it is the log that is not its own. */
function isWholeAlone(copy: string): boolean {
  rmSync(logOf(copy), { force: true })
  rmSync(`${copy}-shm`, { force: true })
  const db = new Database(copy)
  try {
    return isWhole(db)
  } catch {
    return false
  } finally {
    db.close()
  }
}

function judgeWithLog(file: string, known: Head | undefined, look: Look): void {
  // A file that was never opened as a ledger is, such as a backup, has no log: SQLite would play any that lies there into it.
  if (!keepsALog(file)) throw new LedgerRefused('ledger.foreignLog')
  try {
    onCopy(file, copy => judgeRecovered(copy, known, look))
  } catch (error) {
    if (!isDamage(error)) throw error
    throw new LedgerRefused(onCopy(file, isWholeAlone) ? 'ledger.foreignLog' : 'ledger.damaged')
  }
}

/** Looks into a file without a log, and leaves nothing of SQLite's beside it. */
function lookInto(file: string, look: Look): void {
  const made = [logOf(file), `${file}-shm`].filter(path => !existsSync(path))
  const db = new Database(file, { readonly: true, timeout: 300 })
  try {
    look(db)
  } finally {
    db.close()
    for (const path of made) rmSync(path, { force: true })
  }
}

/**
 * Looks at the file as SQLite would have it once it is recovered, without a change to it or to its log: what a crash left half
 * written is no damage. Returns whether there is anything in it yet. Throws LedgerRefused: `ledger.foreign`, `ledger.damaged`,
 * `ledger.foreignLog` where the log beside it belongs to another file or to an older state of this one; and what `look` throws.
 */
export function judge(file: string, known: Head | undefined, look: Look): 'new' | 'ledger' {
  const logged = hasLog(file)
  const kind = checkHeader(file, logged)
  if (kind === 'new') return kind
  if (logged) judgeWithLog(file, known, look)
  else if (isCutShort(file)) throw new LedgerRefused('ledger.damaged')
  else lookInto(file, look)
  return kind
}
