import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type Database from 'better-sqlite3'
import { giveRandomHex } from './identity.ts'
import { LedgerRefused } from './ledger-refused.ts'
import { migrationSteps } from './migration-steps.ts'
import type { Outside } from './outside.ts'

/** One frozen step of the ledger's shape. */
export interface Migration {
  readonly number: number
  readonly name: string
  readonly sql: string
  readonly sha256: string
}

const named = /^(\d{4})_[a-z0-9_]+\.sql$/

/** The migrations in `folder`, in order. Throws when a number is missing or doubled: that is a broken build, not a broken ledger. */
export function migrationsIn(folder: string): Migration[] {
  const names = readdirSync(folder)
    .filter(name => named.test(name))
    .sort()
  return names.map((name, index) => {
    const number = Number(name.slice(0, 4))
    if (number !== index + 1)
      throw new Error(`migrations must rise without gaps: ${name} stands where ${index + 1} belongs`)
    const sql = readFileSync(join(folder, name), 'utf8')
    return { number, name, sql, sha256: createHash('sha256').update(sql).digest('hex') }
  })
}

/** The migrations the file still lacks. Refuses a file whose applied ones are not the very ones this build knows. */
export function pendingMigrations(
  db: Database.Database,
  migrations: readonly Migration[],
): readonly Migration[] {
  const version = db.pragma('user_version', { simple: true }) as number
  if (version > migrations.length)
    throw new LedgerRefused('ledger.newer', { version, known: migrations.length })
  if (version === 0) return migrations
  const applied = db
    .prepare<[], { number: number; sha256: string }>(
      'SELECT number, sha256 FROM applied_migrations ORDER BY number',
    )
    .all()
  const sound =
    applied.length === version &&
    applied.every((a, i) => a.number === i + 1 && a.sha256 === migrations[i]?.sha256)
  if (!sound) throw new LedgerRefused('ledger.otherHistory', { version })
  return migrations.slice(version)
}

const record = `
  CREATE TABLE IF NOT EXISTS applied_migrations (
    number INTEGER PRIMARY KEY, name TEXT NOT NULL, sha256 TEXT NOT NULL, applied_at TEXT NOT NULL
  ) STRICT`

/** Applies the migrations, each in its own transaction with its hash on record and every foreign key checked before it commits. */
export function applyMigrations(
  db: Database.Database,
  pending: readonly Migration[],
  { now, random }: Outside,
): void {
  const appliedAt = now()
  giveRandomHex(db, random)
  db.pragma('foreign_keys = OFF')
  const apply = db.transaction((migration: Migration) => {
    db.exec(record)
    db.exec(migration.sql)
    migrationSteps[migration.number]?.(db, random)
    db.prepare('INSERT INTO applied_migrations VALUES (?, ?, ?, ?)').run(
      migration.number,
      migration.name,
      migration.sha256,
      appliedAt,
    )
    const broken = db.pragma('foreign_key_check') as unknown[]
    if (broken.length > 0) throw new LedgerRefused('ledger.brokenReferences', { rows: broken.length })
    db.pragma(`user_version = ${migration.number}`)
  })
  for (const migration of pending) apply.immediate(migration)
  db.pragma('foreign_keys = ON')
}
