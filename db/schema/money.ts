import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import type { LineKind } from '../../core/pricing/kinds/index.ts'
import type { PaymentMethod, WriteOffKind } from '../../core/vocabulary/work.ts'
import { amount, code, id, words } from './columns.ts'

/** What every entry of an owner's money carries: when, on which day, by whom, about what, and how much. */
const ofAnOwner = () => ({
  id: id(),
  at: text().notNull(),
  onDate: text().notNull(),
  personId: integer(),
  ownerId: integer().notNull(),
  repairId: integer(),
  amountMinor: amount().notNull(),
})

export const payments = sqliteTable('payments', {
  ...ofAnOwner(),
  invoiceId: integer(),
  receiptId: integer(),
  method: code<PaymentMethod>(),
  reference: words(),
})

export const writeOffs = sqliteTable('write_offs', {
  ...ofAnOwner(),
  /** The payment in cash that is rounded. */
  paymentId: integer(),
  kind: code<WriteOffKind>(),
  reason: words(),
})

export const settledTaxes = sqliteTable('settled_taxes', {
  id: id(),
  repairId: integer().notNull(),
  onDate: text().notNull(),
  code: text().notNull(),
  rate: text().notNull(),
  kind: code<LineKind | ''>(),
  taxableMinor: amount().notNull(),
  taxMinor: amount().notNull(),
})

export const drawerCounts = sqliteTable('drawer_counts', {
  id: id(),
  at: text().notNull(),
  onDate: text().notNull(),
  personId: integer(),
  /** The last payment on record when it was counted; 0 where there was none. */
  lastPaymentId: integer().notNull(),
  expectedMinor: amount().notNull(),
  countedMinor: amount().notNull(),
  /** Taken out after the count, as to the bank. */
  takenMinor: amount().notNull(),
  remark: words(),
})

export const closedPeriods = sqliteTable('closed_periods', {
  id: id(),
  at: text().notNull(),
  personId: integer(),
  toDate: text().notNull(),
})
