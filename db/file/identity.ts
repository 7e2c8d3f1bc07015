import type Database from 'better-sqlite3'
import type { Outside } from './outside.ts'

/** What tells a ledger from every other, and this state of its file from an older one; 32 hex digits each. */
export interface LedgerIdentity {
  /** For good. */
  readonly identity: string
  /** New at each opening of the file. */
  readonly opening: string
}

/** So many random bytes as hex digits. */
export const hexOf = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex')

/** What a migration may ask of chance: `random_hex(16)` gives 32 hex digits. */
export const giveRandomHex = (db: Database.Database, random: Outside['random']): void =>
  void db.function('random_hex', { deterministic: false }, bytes => hexOf(random(Number(bytes))))

/** The identity in an open file; null where it is of a shape that had none. */
export function identityIn(db: Database.Database): LedgerIdentity | null {
  const table = db.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'ledger_identity'").get()
  if (!table) return null
  const row = db
    .prepare<[], LedgerIdentity>('SELECT identity, opening FROM ledger_identity WHERE id = 1')
    .get()
  return row ?? null
}

/** Says in the file itself which opening it is opened by from now on. */
export const setOpening = (db: Database.Database, opening: string): void =>
  void db.prepare('UPDATE ledger_identity SET opening = ? WHERE id = 1').run(opening)
