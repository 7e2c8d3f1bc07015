import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import type {
  Chime,
  Dial,
  Duration,
  Escapement,
  Form,
  OrUnknown,
  Power,
  Strike,
} from '../../core/vocabulary/clock.ts'
import { code, flag, id, words } from './columns.ts'

export const owners = sqliteTable('owners', {
  id: id(),
  name: text().notNull(),
  address: words(),
  country: words(),
  notes: words(),
  mergedIntoId: integer(),
  sinceAt: text().notNull(),
})

export const ownerContacts = sqliteTable('owner_contacts', {
  id: id(),
  ownerId: integer().notNull(),
  kind: code<'phone' | 'e-mail'>(),
  value: text().notNull(),
  preferred: flag(),
  struckReason: text(),
})

export const clocks = sqliteTable('clocks', {
  id: id(),
  form: code<Form>(),
  maker: words(),
  serial: words(),
  marks: words(),
  trains: integer(),
  power: code<OrUnknown<Power>>().default('unknown'),
  duration: code<OrUnknown<Duration>>().default('unknown'),
  escapement: code<OrUnknown<Escapement>>().default('unknown'),
  strike: code<OrUnknown<Strike>>().default('unknown'),
  chime: code<OrUnknown<Chime>>().default('unknown'),
  chimeCorrects: flag(),
  beats: words(),
  dial: code<OrUnknown<Dial>>().default('unknown'),
  jewelled: flag(),
  luminous: flag(),
  mercury: flag(),
  mains: flag(),
  notes: words(),
  heightMm: integer(),
  widthMm: integer(),
  depthMm: integer(),
  weightG: integer(),
})

export const clockOwners = sqliteTable('clock_owners', {
  id: id(),
  clockId: integer().notNull(),
  ownerId: integer().notNull(),
  fromAt: text().notNull(),
  untilAt: text(),
})

/** Owners whose personal data were taken out. */
export const forgottenOwners = sqliteTable('forgotten_owners', {
  /** The owner's. */
  id: integer().primaryKey(),
  at: text().notNull(),
  personId: integer(),
  reason: text().notNull(),
})

/** Has a row only inside the transaction that forgets an owner. */
export const forgetting = sqliteTable('forgetting', { id: integer().primaryKey() })
