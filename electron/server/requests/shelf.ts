import { Hono } from 'hono'
import { z } from 'zod'
import { minuteOf } from '../../../core/calendar/local.ts'
import { isNutTurns } from '../../../core/rate/reading.ts'
import { isLimitPerDay } from '../../../core/run-in/limits.ts'
import { mostBlows } from '../../../core/strike/blows.ts'
import * as log from '../../../db/books/readings.ts'
import * as book from '../../../db/books/shelf.ts'
import { body } from './body.ts'
import { count, decimal, id, openGrams, openMm, optional, required, saying, tick } from './fields.ts'
import { openMoment } from './moment.ts'
import { type Env, perform } from './perform.ts'

const error = z.string().trim().max(30)
const openTick = z.boolean().nullable().default(null)

const nutTurns = z.union([
  z.literal(''),
  decimal.refine(text => isNutTurns(Number(text)), saying('reading.nutTurns')),
])

const reading = {
  at: openMoment,
  error: error.nullable().default(null),
  wound: tick,
  strikeRight: openTick,
  chimeRight: openTick,
  heardAt: optional(5).refine(text => text === '' || minuteOf(text) !== undefined, saying('input.notATime')),
  blows: count(0, mostBlows).nullable().default(null),
  inBeat: openTick,
  stopped: tick,
  handsSet: tick,
  nutTurns: nutTurns.default(''),
  temperatureC: z.number().min(-40).max(60).nullable().default(null),
  note: optional(400),
}

const startInput = z.strictObject({
  repairId: id,
  placeId: id,
  start: openMoment,
  limitPerDay: decimal
    .refine(text => isLimitPerDay(Number(text)), saying('runIn.limitPerDay'))
    .nullable()
    .default(null),
  error: error.nullable().default('0'),
})

const reason = required(400)

/** Acts at the run-in shelf. */
const room = {
  heightMm: openMm,
  widthMm: openMm,
  depthMm: openMm,
  bearsG: openGrams,
  weightsHang: openTick,
}

export const shelf = new Hono<Env>()
  .post('/startRunIn', body(startInput), c => perform(c, book.startRunIn, c.req.valid('json')))
  .post('/read', body(z.strictObject({ runId: id, ...reading })), c =>
    perform(c, log.read, c.req.valid('json')),
  )
  .post('/correct', body(z.strictObject({ readingId: id, ...reading })), c =>
    perform(c, log.correct, c.req.valid('json')),
  )
  .post('/strikeReading', body(z.strictObject({ readingId: id, reason })), c =>
    perform(c, log.strikeReading, c.req.valid('json')),
  )
  .post('/pass', body(z.strictObject({ runId: id, reason: optional(400) })), c =>
    perform(c, book.pass, c.req.valid('json')),
  )
  .post('/restart', body(z.strictObject({ runId: id, reason, error: error.nullable().default('0') })), c =>
    perform(c, book.restart, c.req.valid('json')),
  )
  .post('/toBench', body(z.strictObject({ runId: id, reason })), c =>
    perform(c, book.toBench, c.req.valid('json')),
  )
  .post('/move', body(z.strictObject({ runId: id, placeId: id })), c =>
    perform(c, book.move, c.req.valid('json')),
  )
  .post(
    '/describePlace',
    body(z.strictObject({ placeId: id, ...room, seen: z.strictObject(room).nullable() })),
    c => perform(c, book.describePlace, c.req.valid('json')),
  )
  .post('/compareClock', body(z.strictObject({ error, reference: required(120) })), c =>
    perform(c, log.compareClock, c.req.valid('json')),
  )
