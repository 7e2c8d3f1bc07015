import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import type { PaperContents, WorkingStep } from '../../core/papers/contents.ts'
import type { BookAsked } from '../../core/pricing/book-line.ts'
import type { LineKind } from '../../core/pricing/kinds/index.ts'
import type { Tax, TaxRules } from '../../core/pricing/price-input.ts'
import type { Exclusion, LineWork, Scope, Way } from '../../core/vocabulary/work.ts'
import { amount, code, flag, id, json, words } from './columns.ts'

export const documents = sqliteTable('documents', {
  id: id(),
  kind: code<PaperContents['kind']>(),
  number: text().notNull(),
  sequence: integer().notNull(),
  issuedAt: text().notNull(),
  issuedOn: text().notNull(),
  ownerId: integer().notNull(),
  repairId: integer(),
  correctsId: integer(),
  currency: text().notNull(),
  totalMinor: amount().notNull(),
  taxMinor: amount().notNull(),
  contents: text().notNull(),
  contentsHash: text().notNull(),
})

export const documentTaxes = sqliteTable('document_taxes', {
  id: id(),
  documentId: integer().notNull(),
  code: text().notNull(),
  rate: text().notNull(),
  kind: code<LineKind | ''>(),
  taxableMinor: amount().notNull(),
  taxMinor: amount().notNull(),
})

export const warranties = sqliteTable('warranties', {
  id: id(),
  repairId: integer().notNull(),
  documentId: integer().notNull(),
  scope: code<Scope>(),
  startOn: text().notNull(),
  length: integer().notNull(),
  unit: code<'months' | 'days'>(),
  convention: code<'same-date' | 'day-before'>(),
  onComeback: code<'restart' | 'continue'>(),
  pausesInShop: integer({ mode: 'boolean' }).notNull(),
  lastDay: text().notNull(),
  exclusions: json<Exclusion[]>().notNull(),
})

export const estimates = sqliteTable('estimates', {
  id: id(),
  repairId: integer().notNull(),
  version: integer().notNull(),
  supplement: flag(),
  writtenAt: text().notNull(),
  tax: json<TaxRules>().notNull(),
  highMinor: amount(),
  totalMinor: amount().notNull(),
  remark: words(),
  validUntil: text(),
  sentAt: text(),
  sentWay: code<Way | ''>().default(''),
  documentId: integer(),
  /** Where several repairs stand on one estimate: the one that it is numbered by; null on that one. */
  leadId: integer(),
})

export const estimateLines = sqliteTable('estimate_lines', {
  id: id(),
  estimateId: integer().notNull(),
  position: integer().notNull(),
  kind: code<LineKind>(),
  description: text().notNull(),
  quantity: text().notNull(),
  unit: text().notNull(),
  taxes: json<Tax[]>().notNull(),
  working: json<WorkingStep[]>().notNull(),
  netMinor: amount().notNull(),
  partId: integer(),
  outsideWorkId: integer(),
  findingId: integer(),
  charge: text().notNull().default('0'),
  work: text().$type<LineWork>(),
  priced: json<BookAsked>(),
})

export const goAheads = sqliteTable('go_aheads', {
  id: id(),
  repairId: integer().notNull(),
  estimateId: integer(),
  at: text().notNull(),
  personId: integer(),
  answer: code<'go-ahead' | 'declined'>(),
  who: text().notNull(),
  way: code<Way>(),
  limitMinor: amount(),
  remark: words(),
  limitNamed: flag(),
})
