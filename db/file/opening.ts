import type Database from 'better-sqlite3'
import { foreignFolders, markFolders } from './files-beside.ts'
import { type Head, openHead, type Tail } from './head.ts'
import { hexOf, identityIn, setOpening } from './identity.ts'
import { LedgerRefused } from './ledger-refused.ts'
import { missingEntries, tailOf } from './missing.ts'
import type { Outside } from './outside.ts'

/** Refuses a ledger from which entries that were acknowledged are gone. */
function refuseMissing(db: Database.Database, known: Head): void {
  const missing = missingEntries(db, known)
  if (!missing) return
  const { count, from, to } = missing
  throw new LedgerRefused('ledger.entriesMissing', { ...(count === null ? {} : { count }), from, to })
}

/**
 * Holds what is known beside an open file against what stands in it. Throws LedgerRefused: `ledger.foreignFolders` where what stands
 * beside it is another ledger's, `ledger.entriesMissing` unless that was decided upon (`withoutMissing`).
 */
export function holdAgainst(
  db: Database.Database,
  file: string,
  known: Head | undefined,
  withoutMissing = false,
): void {
  const own = identityIn(db)
  if (!own) return
  const foreign = foreignFolders(file, own.identity)
  if (known && known.identity !== own.identity) foreign.push('papers')
  if (foreign.length > 0) throw new LedgerRefused('ledger.foreignFolders', { folders: foreign.join(', ') })
  if (known && !withoutMissing) refuseMissing(db, known)
}

/** Keeps what is known beside an open ledger up with it. */
export interface HeadKeeper {
  keep(): void
  close(): void
}

/**
 * Says in the file and beside it that a new opening has begun: from now on a log of another one is told from this one's. Nothing where
 * the file is of a shape that has no identity yet.
 */
export function beginOpening(
  db: Database.Database,
  file: string,
  random: Outside['random'],
): HeadKeeper | undefined {
  const own = identityIn(db)
  if (!own) return undefined
  const { identity } = own
  const opening = hexOf(random(16))
  const head = openHead(file)
  const keep = (of: Omit<Head, keyof Tail>, synced: boolean) =>
    head.keep({ ...of, ...tailOf(db) }, { synced })
  keep({ ...own, next: opening }, true)
  setOpening(db, opening)
  // So that the file by itself, without its log, says by which opening it was opened, and what it is.
  db.pragma('wal_checkpoint(TRUNCATE)')
  keep({ identity, opening }, true)
  markFolders(file, identity)
  return { keep: () => keep({ identity, opening }, false), close: head.close }
}
