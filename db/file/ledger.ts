import { accessSync, constants, existsSync, mkdirSync, statSync } from 'node:fs'
import { dirname } from 'node:path'
import Database from 'better-sqlite3'
import { type BetterSQLite3Database, drizzle } from 'drizzle-orm/better-sqlite3'
import * as schema from '../schema/index.ts'
import { backUp, backUpInSteps } from './backup.ts'
import { type Head, readHead } from './head.ts'
import { applicationId } from './header.ts'
import { judge } from './judge.ts'
import { LedgerGone, LedgerRefused } from './ledger-refused.ts'
import { applyMigrations, migrationsIn, pendingMigrations } from './migrations.ts'
import { beginOpening, type HeadKeeper, holdAgainst } from './opening.ts'
import type { Outside } from './outside.ts'
import { keepPrepared } from './prepared.ts'

type Handle = BetterSQLite3Database<typeof schema>

/** A handle that can only look. */
export type Read = Pick<Handle, 'select' | 'selectDistinct' | 'all' | 'get' | '$count'>

/** A handle inside a verb's transaction: looks and writes. */
export type Write = Read & Pick<Handle, 'insert' | 'update' | 'delete' | 'run'>

/** An open ledger file, owned by this process until it is closed. */
export interface Ledger {
  readonly file: string
  readonly read: Read
  /** Chance, as it is given from outside. */
  readonly random: Outside['random']
  /** Throws LedgerGone where the file was taken away or replaced since it was opened. */
  stillThere(): void
  /** Runs `body` in one IMMEDIATE transaction: all of it is on disk when this returns, or none of it when it throws. */
  write<T>(body: (tx: Write) => T): T
  /** Leaves nothing in the file of what was deleted from it; takes as long as writing the file anew. */
  purge(): void
  /** Writes a checked copy to `target`, replacing a file of that name only when the copy is whole. */
  backUp(target: string): void
  /** The same between other work, a few pages at a time; `target` is replaced at once and whole only when this is done. */
  backUpInSteps(target: string): Promise<void>
  close(): void
}

/** Set on every connection and read back (SQLite pragma documentation); one process owns the file. */
const pragmas = {
  locking_mode: 'exclusive',
  journal_mode: 'wal',
  synchronous: 2, // FULL: acknowledged means on disk
  foreign_keys: 1,
  busy_timeout: 5000,
  trusted_schema: 0,
  cell_size_check: 1,
  secure_delete: 1,
  fullfsync: 1,
} as const

function setPragmas(db: Database.Database): void {
  for (const [name, value] of Object.entries(pragmas)) {
    db.pragma(`${name} = ${value}`)
    const kept = db.pragma(name, { simple: true })
    if (kept !== value) throw new Error(`SQLite kept ${name} at ${kept} instead of ${value}`)
  }
}

/** What SQLite or the system says on opening, as a refusal that tells what to do. */
function asRefusal(error: unknown): unknown {
  const code = String((error as { code?: unknown } | null)?.code ?? '')
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return new LedgerRefused('ledger.noAccess')
  if (!(error instanceof Database.SqliteError)) return error
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED'))
    return new LedgerRefused('ledger.inUse')
  if (code.startsWith('SQLITE_CORRUPT') || code === 'SQLITE_NOTADB')
    return new LedgerRefused('ledger.damaged')
  if (code.startsWith('SQLITE_CANTOPEN') || code.startsWith('SQLITE_READONLY'))
    return new LedgerRefused('ledger.noAccess')
  return error
}

function bringUpToDate(db: Database.Database, file: string, options: OpenOptions): void {
  const pending = pendingMigrations(db, migrationsIn(options.migrations).slice(0, options.upTo))
  if (pending.length === 0) return
  const version = db.pragma('user_version', { simple: true }) as number
  if (version > 0) backUp(db, `${file}.before-${String(version + 1).padStart(4, '0')}`)
  db.pragma(`application_id = ${applicationId}`)
  applyMigrations(db, pending, options)
  db.pragma('wal_checkpoint(TRUNCATE)') // so that the file's own header says what it is, to whoever looks next
}

export interface OpenOptions extends Outside {
  /** Folder of the migrations. */
  readonly migrations: string
  /** The last migration to apply; all of them where it is left out. */
  readonly upTo?: number
  /** Leaves what rows refer to unchecked: to fill a new ledger in any order, by somebody who checks all of it at the end. */
  readonly referencesLater?: boolean
  /** A copy to look at or to fill, of a file that was judged: nothing is kept beside it, and nothing beside it is asked. */
  readonly passing?: boolean
  /** Goes on although entries that were acknowledged are missing: somebody has been told, and has decided so. */
  readonly withoutMissing?: boolean
}

/**
 * Opens the ledger at `file`, making it where there is none, and brings it up to date after a backup of its former self.
 * Throws LedgerRefused, with the file as it was, when it is foreign, damaged, newer than this build or open elsewhere.
 */
export function openLedger(file: string, options: OpenOptions): Ledger {
  const known = options.passing ? undefined : readHead(file)
  let db: Database.Database | undefined
  try {
    if (!options.passing) refuseUnsound(file, known, options)
    mkdirSync(dirname(file), { recursive: true })
    refuseUnwritable(file)
    db = new Database(file, { timeout: 300 })
    setPragmas(db)
    bringUpToDate(db, file, options)
    const head = options.passing ? undefined : beginOpening(db, file, options.random)
    if (options.referencesLater) db.pragma('foreign_keys = OFF')
    return ledgerOn(db, file, { random: options.random, head })
  } catch (error) {
    db?.close()
    throw asRefusal(error)
  }
}

/** Refuses what is no sound ledger, and an empty place where one stood. */
function refuseUnsound(file: string, known: Head | undefined, { withoutMissing }: OpenOptions): void {
  const kind = judge(file, known, db => holdAgainst(db, file, known, withoutMissing))
  if (kind === 'new' && known && known.count > 0) throw new LedgerRefused('ledger.vanished')
}

/** SQLite opens a file that may only be read, and finds out much later. */
function refuseUnwritable(file: string): void {
  if (!existsSync(file)) return
  try {
    accessSync(file, constants.W_OK)
  } catch {
    throw new LedgerRefused('ledger.noAccess')
  }
}

/** Throws LedgerGone unless the path still leads to the file that was opened, by its device and its number there. */
function watch(file: string): () => void {
  const opened = statSync(file, { bigint: true })
  return () => {
    const there = statSync(file, { bigint: true, throwIfNoEntry: false })
    if (there?.ino !== opened.ino || there.dev !== opened.dev) throw new LedgerGone(file)
  }
}

/**
 * The same ledger for a trial: what `write` runs answers or throws as it would, and is then taken back whole. So an act
 * can be checked, by its own verb and in full, before a person is asked whether it shall be done.
 */
export function onTrial(ledger: Ledger): Ledger {
  return {
    ...ledger,
    purge: () => {},
    write: body => {
      let tried: { result: ReturnType<typeof body> } | undefined
      try {
        ledger.write(tx => {
          tried = { result: body(tx) }
          throw takenBack
        })
      } catch (thrown) {
        if (thrown !== takenBack) throw thrown
      }
      return (tried as { result: ReturnType<typeof body> }).result
    },
  }
}

const takenBack = new Error('a trial is taken back')

interface Beside {
  readonly random: Outside['random']
  readonly head: HeadKeeper | undefined
}

function ledgerOn(db: Database.Database, file: string, { random, head }: Beside): Ledger {
  keepPrepared(db)
  const handle: Handle = drizzle(db, { schema, casing: 'snake_case' })
  const stillThere = watch(file)
  return {
    file,
    read: handle,
    random,
    stillThere,
    write: body => {
      stillThere()
      const result = handle.transaction(tx => body(tx), { behavior: 'immediate' })
      head?.keep()
      return result
    },
    purge: () => {
      db.pragma('wal_checkpoint(TRUNCATE)')
      db.exec('VACUUM')
      db.pragma('wal_checkpoint(TRUNCATE)')
    },
    backUp: target => backUp(db, target),
    backUpInSteps: target => backUpInSteps(db, target),
    close: () => {
      db.close()
      head?.close()
    },
  }
}
