import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import type { Role } from '../../core/people/roles.ts'
import { id, json, words } from './columns.ts'

export const people = sqliteTable('people', {
  id: id(),
  name: text().notNull(),
  active: integer({ mode: 'boolean' }).notNull().default(true),
  roles: json<readonly Role[]>().notNull().default(['owner']),
  initials: words(),
  benchHours: words(),
})

export const settings = sqliteTable('settings', {
  name: text().primaryKey(),
  value: json<unknown>().notNull(),
})

export const holidays = sqliteTable('holidays', { onDate: text().primaryKey(), name: text().notNull() })

/** The last number used in each numbered series. */
export const series = sqliteTable('series', { name: text().primaryKey(), last: integer().notNull() })

/** What tells this ledger from every other; one row. */
export const ledgerIdentity = sqliteTable('ledger_identity', {
  id: id(),
  identity: text().notNull(),
  opening: text().notNull(),
})

export const dayBook = sqliteTable('day_book', {
  id: id(),
  at: text().notNull(),
  personId: integer(),
  act: text().notNull(),
  version: integer().notNull().default(1),
  key: text(),
  subjectKind: text().notNull(),
  subjectId: integer().notNull(),
  commitment: text().notNull(),
  salt: text(),
  input: text(),
  result: text(),
  previousHash: text().notNull(),
  hash: text().notNull(),
  formerHash: text(),
})

export const findEntries = sqliteTable('find_entries', {
  id: id(),
  kind: text().$type<'owner' | 'clock' | 'repair' | 'paper'>().notNull(),
  subjectId: integer().notNull(),
  words: text().notNull(),
  marks: text().notNull(),
})

/** What is being typed and not yet entered. */
export const drafts = sqliteTable('drafts', {
  key: text().primaryKey(),
  page: text().notNull(),
  title: text().notNull().default(''),
  body: json<unknown>().notNull(),
  begunAt: text().notNull(),
  changedAt: text().notNull(),
})
