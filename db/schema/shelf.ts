import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import type { KeptVerdict } from '../../core/run-in/former.ts'
import type { RunInPolicy } from '../../core/run-in/policy.ts'
import type { ShelfEvent } from '../../core/run-in/shelf-reading.ts'
import type { PlaceKind } from '../../core/vocabulary/work.ts'
import { code, flag, id, json, words } from './columns.ts'

export const shelfPlaces = sqliteTable('shelf_places', {
  id: id(),
  name: text().notNull(),
  kind: code<PlaceKind>(),
  heightMm: integer(),
  widthMm: integer(),
  depthMm: integer(),
  weightsHang: integer({ mode: 'boolean' }),
  walkOrder: integer().notNull(),
  active: integer({ mode: 'boolean' }).notNull().default(true),
  bearsG: integer(),
})

export const runInRuns = sqliteTable('run_in_runs', {
  id: id(),
  repairId: integer().notNull(),
  placeId: integer(),
  startedAt: text().notNull(),
  policy: json<RunInPolicy>().notNull(),
  limitPerDay: text().notNull(),
  /** The greatest scatter in seconds, decimal text; null for what is usual for its kind, as in runs begun before it was asked. */
  steadyWithin: text(),
  readyOn: text().notNull(),
  endedAt: text(),
  outcome: text().$type<'passed' | 'restarted' | 'to-bench'>(),
  reason: words(),
  decidedBy: integer(),
  figures: json<KeptVerdict>(),
})

export const runInStages = sqliteTable('run_in_stages', {
  id: id(),
  runId: integer().notNull(),
  position: integer().notNull(),
  name: text().notNull(),
  fromAt: text().notNull(),
  toAt: text().notNull(),
})

/** Winds and readings the plan asks for, and when each was done. */
export const runInDues = sqliteTable('run_in_dues', {
  id: id(),
  runId: integer().notNull(),
  kind: code<'wind' | 'reading'>(),
  dueAt: text().notNull(),
  doneAt: text(),
})

export const readings = sqliteTable('readings', {
  id: id(),
  runId: integer().notNull(),
  at: text().notNull(),
  enteredAt: text().notNull(),
  personId: integer(),
  /** As found; null where it was not read. */
  errorMs: integer(),
  /** As left, where the hands were set. */
  leftMs: integer(),
  event: text().$type<ShelfEvent>(),
  hourShown: integer(),
  hourCounted: integer(),
  halfCounted: integer(),
  quarter: integer().$type<1 | 2 | 3 | 4>(),
  quarterRight: integer({ mode: 'boolean' }),
  twelveRight: flag(),
  fourRight: flag(),
  selfCorrected: integer({ mode: 'boolean' }),
  silent: integer({ mode: 'boolean' }),
  repeats: integer({ mode: 'boolean' }),
  wound: flag(),
  strikeRight: integer({ mode: 'boolean' }),
  chimeRight: integer({ mode: 'boolean' }),
  inBeat: integer({ mode: 'boolean' }),
  stopped: flag(),
  nutTurns: words(),
  temperatureC: real(),
  note: words(),
  correctsId: integer(),
  withdrawn: flag(),
})

export const clockChecks = sqliteTable('clock_checks', {
  id: id(),
  at: text().notNull(),
  personId: integer(),
  errorMs: integer().notNull(),
  reference: text().notNull(),
})
