import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import type { BenchStep } from '../../core/bench/steps.ts'
import type { Caution } from '../../core/cautions/cautions.ts'
import type { PartSize } from '../../core/stores/part-size.ts'
import type { Component } from '../../core/vocabulary/intake.ts'
import type { AsFoundMark, PartKind, SpringEnd, Task, WaitReason } from '../../core/vocabulary/work.ts'
import { amount, code, flag, id, json, words } from './columns.ts'

export const labourEntries = sqliteTable('labour_entries', {
  id: id(),
  repairId: integer().notNull(),
  personId: integer(),
  task: code<Task>(),
  startedAt: text().notNull(),
  endedAt: text(),
  /** False where only the minutes and the day were told. */
  timed: integer({ mode: 'boolean' }).notNull().default(true),
  note: words(),
  struckReason: text(),
})

export const findings = sqliteTable('findings', {
  id: id(),
  repairId: integer().notNull(),
  at: text().notNull(),
  personId: integer(),
  component: code<Component>(),
  text: text().notNull(),
  needsWord: flag(),
  struckReason: text(),
})

export const asFound = sqliteTable('as_found', {
  id: id(),
  repairId: integer().notNull(),
  at: text().notNull(),
  personId: integer(),
  mark: code<AsFoundMark>(),
  text: text().notNull(),
  struckReason: text(),
})

export const cautionsSeen = sqliteTable('cautions_seen', {
  id: id(),
  repairId: integer().notNull(),
  caution: code<Caution>(),
  at: text().notNull(),
  personId: integer(),
})

/** Steps of a service that were ticked. */
export const stepsDone = sqliteTable('steps_done', {
  id: id(),
  repairId: integer().notNull(),
  step: code<BenchStep>(),
  done: integer({ mode: 'boolean' }).notNull(),
  at: text().notNull(),
  personId: integer(),
})

export const waits = sqliteTable('waits', {
  id: id(),
  repairId: integer().notNull(),
  reason: code<WaitReason>(),
  note: words(),
  fromAt: text().notNull(),
  untilAt: text(),
})

export const vendors = sqliteTable('vendors', { id: id(), name: text().notNull(), contact: words() })

export const outsideWork = sqliteTable('outside_work', {
  id: id(),
  repairId: integer().notNull(),
  vendorId: integer().notNull(),
  description: text().notNull(),
  sentAt: text().notNull(),
  dueOn: text(),
  backAt: text(),
  costMinor: amount(),
  priceMinor: amount(),
})

export const parts = sqliteTable('parts', {
  id: id(),
  kind: code<PartKind>(),
  name: text().notNull(),
  sizes: json<PartSize[]>().notNull(),
  /** How the ends of a mainspring are made; '' for other parts and where it is not known. */
  ends: code<SpringEnd | ''>().default(''),
  vendorId: integer(),
  keptAt: words(),
  unitCostMinor: amount().notNull(),
  unitPriceMinor: amount().notNull(),
  reorderAt: integer().notNull().default(0),
  active: integer({ mode: 'boolean' }).notNull().default(true),
  inStock: integer().notNull().default(0),
})

export const partOrders = sqliteTable('part_orders', {
  id: id(),
  partId: integer().notNull(),
  vendorId: integer(),
  repairId: integer(),
  quantity: integer().notNull(),
  orderedAt: text().notNull(),
  dueOn: text(),
  arrivedAt: text(),
})

export const stockMoves = sqliteTable('stock_moves', {
  id: id(),
  partId: integer().notNull(),
  at: text().notNull(),
  personId: integer(),
  kind: code<'received' | 'used' | 'put-back' | 'counted'>(),
  quantity: integer().notNull(),
  repairId: integer(),
  unitCostMinor: amount().notNull(),
  unitPriceMinor: amount().notNull(),
  undoesId: integer(),
  note: words(),
})
