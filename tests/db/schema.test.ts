import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { is } from 'drizzle-orm'
import { CasingCache } from 'drizzle-orm/casing'
import { getTableConfig, SQLiteTable } from 'drizzle-orm/sqlite-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openLedger } from '../../db/file/ledger.ts'
import * as schema from '../../db/schema/index.ts'
import { random } from '../chance.ts'
import { migrations, now, temporaryFolder } from './temporary-ledger.ts'

const place = temporaryFolder()
const file = join(place.folder, 'shop.countwheel')
let db: Database.Database
beforeAll(() => {
  openLedger(file, { migrations, now, random }).close()
  db = new Database(file)
  db.pragma('foreign_keys = ON')
})
afterAll(() => {
  db.close()
  place.remove()
})

const names = (type: string): string[] =>
  db
    .prepare<[string], { name: string }>(
      "SELECT name FROM sqlite_schema WHERE type = ? AND name NOT LIKE 'sqlite_%' AND name NOT LIKE 'find\\_%\\_%' ESCAPE '\\' ORDER BY name",
    )
    .all(type)
    .map(row => row.name)

describe('the shape of the ledger', () => {
  it('is the one on record in migrations/schema.sql (written anew with UPDATE_SCHEMA=1 when a migration changes it)', () => {
    const rows = db
      .prepare<[], { sql: string }>(
        "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' ORDER BY type, name",
      )
      .all()
    const shape = `${rows.map(row => `${row.sql};`).join('\n\n')}\n`
    const snapshot = join(migrations, 'schema.sql')
    if (process.env.UPDATE_SCHEMA) writeFileSync(snapshot, shape)
    expect(shape).toBe(readFileSync(snapshot, 'utf8'))
  })

  it('has strict tables only', () => {
    const loose = db
      .prepare<[], { name: string }>(
        "SELECT name FROM pragma_table_list WHERE type = 'table' AND schema = 'main' AND strict = 0",
      )
      .all()
      .map(row => row.name)
    expect(loose.filter(name => !name.startsWith('sqlite_'))).toEqual([])
  })

  it('is described to the program column by column, with the same names and the same columns required', () => {
    const casing = new CasingCache('snake_case')
    const tables = Object.values(schema).filter(value => is(value, SQLiteTable))
    expect(tables.length).toBeGreaterThan(30)
    for (const table of tables) {
      const config = getTableConfig(table)
      const described = config.columns.map(column => [
        casing.getColumnCasing(column),
        column.notNull || column.primary,
      ])
      const actual = db
        .prepare<[string], { name: string; notnull: number; pk: number }>(
          'SELECT * FROM pragma_table_info(?)',
        )
        .all(config.name)
        .map(row => [row.name, row.notnull === 1 || row.pk > 0])
      expect({ [config.name]: described.sort() }).toEqual({ [config.name]: actual.sort() })
    }
  })

  it('forbids by trigger that what is on record for good is changed or deleted', () => {
    const forbidding = names('trigger').filter(name => name.includes('never'))
    expect(forbidding).toEqual([
      'closed_periods_are_never_changed',
      'closed_periods_are_never_deleted',
      'day_book_is_never_changed',
      'day_book_is_never_shortened',
      'document_taxes_are_never_changed',
      'document_taxes_are_never_deleted',
      'documents_are_never_changed',
      'documents_are_never_deleted',
      'drawer_counts_are_never_changed',
      'drawer_counts_are_never_deleted',
      'handed_papers_are_never_changed',
      'handed_papers_are_never_deleted',
      'kept_handed_papers_are_never_changed',
      'kept_handed_papers_are_never_deleted',
      'kept_papers_are_never_changed',
      'kept_papers_are_never_deleted',
      'ledger_identity_is_never_changed',
      'ledger_identity_is_never_deleted',
      'readings_are_never_changed',
      'readings_are_never_deleted',
      'stock_moves_are_never_changed',
      'stock_moves_are_never_deleted',
      'write_offs_are_never_changed',
      'write_offs_are_never_deleted',
    ])
  })

  it('answers its listed questions by index, never by reading a whole table', () => {
    const questions = [
      "SELECT * FROM repairs WHERE stage <> 'collected'",
      'SELECT * FROM repairs WHERE number = 1',
      'SELECT * FROM repairs WHERE clock_id = 1 ORDER BY taken_in_at',
      'SELECT * FROM repairs WHERE owner_id = 1 ORDER BY taken_in_at',
      'SELECT * FROM owners ORDER BY name COLLATE NOCASE, id LIMIT 100',
      'SELECT * FROM documents WHERE repair_id = 1',
      "SELECT * FROM documents WHERE kind = 'invoice' AND number = 'I0001'",
      "SELECT * FROM documents WHERE issued_on BETWEEN '2027-01-01' AND '2027-12-31' AND kind = 'invoice'",
      "SELECT * FROM handed_papers WHERE kind = 'statement' AND of_id = 1 ORDER BY id DESC",
      'SELECT * FROM payments WHERE repair_id = 1',
      'SELECT * FROM write_offs WHERE repair_id = 1',
      "SELECT * FROM payments WHERE owner_id = 1 AND (method = 'account' OR repair_id IS NULL)",
      "SELECT code, sum(tax_minor) FROM settled_taxes WHERE on_date BETWEEN '2027-01-01' AND '2027-12-31' GROUP BY code",
      'SELECT * FROM readings WHERE run_id = 1 ORDER BY at',
      'SELECT * FROM stock_moves WHERE part_id = 1 ORDER BY at',
      "SELECT * FROM day_book WHERE subject_kind = 'repair' AND subject_id = 1",
      'SELECT * FROM outside_work WHERE back_at IS NULL AND due_on < 1',
      'SELECT * FROM clock_owners WHERE clock_id = 1 AND until_at IS NULL',
    ]
    for (const question of questions) {
      const plan = db.prepare<[], { detail: string }>(`EXPLAIN QUERY PLAN ${question}`).all()
      const scans = plan.filter(step => /^SCAN (?!.*USING (COVERING )?INDEX)/.test(step.detail))
      expect({ question, scans }).toEqual({ question, scans: [] })
    }
  })

  it('refuses instants and dates that do not exist', () => {
    const insert = db.prepare('INSERT INTO owners (name, since_at) VALUES (?, ?)')
    for (const at of ['2027-02-30T09:00:00.000Z', '2027-03-01 09:00', '2027-03-01T09:00:00Z', 'yesterday'])
      expect(() => insert.run('x', at), at).toThrow('CHECK')
  })
})
