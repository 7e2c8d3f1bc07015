import Database from 'better-sqlite3'
import { sql } from 'drizzle-orm'
import { applyMigrations, migrationsIn } from '../file/migrations.ts'
import { type Check, fault } from './check.ts'

interface Thing {
  readonly type: string
  readonly name: string
  readonly sql: string
}

const listed = "SELECT type, name, sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%'"

/** When and by what chance does not matter to a shape. */
const anyTime = { now: () => '2000-01-01T00:00:00.000Z', random: (bytes: number) => new Uint8Array(bytes) }

/** What a ledger is made of, by this build's migrations. */
function made(migrations: string): Thing[] {
  const db = new Database(':memory:')
  try {
    applyMigrations(db, migrationsIn(migrations), anyTime)
    return db.prepare<[], Thing>(listed).all()
  } finally {
    db.close()
  }
}

const byName = (things: readonly Thing[]) => new Map(things.map(thing => [thing.name, thing]))

/** Tables, indexes and the triggers that forbid change: all there, as they were made, and no other. */
export const shape: Check = function* ({ read, migrations }) {
  const expected = byName(made(migrations))
  const found = byName(read.all<Thing>(sql.raw(listed)))
  for (const { type, name, sql: text } of expected.values()) {
    const own = found.get(name)
    if (!own) yield fault('shape.missing', { type, name })
    else if (own.sql !== text) yield fault('shape.changed', { type, name })
  }
  for (const { type, name } of found.values())
    if (!expected.has(name)) yield fault('shape.foreign', { type, name })
  return expected.size
}
