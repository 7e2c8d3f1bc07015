import { Hono } from 'hono'
import { z } from 'zod'
import { isNutTurns } from '../../../core/rate/reading.ts'
import { isLimitPerDay } from '../../../core/run-in/limits.ts'
import { shelfEvents } from '../../../core/run-in/shelf-reading.ts'
import { mostBlows } from '../../../core/strike/blows.ts'
import * as log from '../../../db/books/readings.ts'
import * as book from '../../../db/books/shelf.ts'
import { body } from './body.ts'
import { count, decimal, id, oneOf, openGrams, openMm, optional, required, saying, tick } from './fields.ts'
import { openMoment } from './moment.ts'
import { type Env, perform } from './perform.ts'

const error = z.string().trim().max(30)
const openTick = z.boolean().nullable().default(null)

const nutTurns = z.union([
  z.literal(''),
  decimal.refine(text => isNutTurns(Number(text)), saying('reading.nutTurns')),
])

const blows = count(0, mostBlows)
const quarters = z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)])

const reading = {
  at: openMoment,
  error: error.nullable().default(null),
  left: error.nullable().default(null),
  wound: tick,
  stopped: tick,
  nutTurns: nutTurns.default(''),
  event: oneOf(shelfEvents).nullable().default(null),
  hour: z
    .strictObject({ shown: count(1, 12), counted: blows })
    .nullable()
    .default(null),
  half: blows.nullable().default(null),
  quarter: z.strictObject({ which: quarters, right: z.boolean() }).nullable().default(null),
  twelveRight: tick,
  fourRight: tick,
  selfCorrected: openTick,
  silent: openTick,
  repeats: openTick,
  inBeat: openTick,
  strikeRight: openTick,
  chimeRight: openTick,
  temperatureC: z.number().min(-40).max(60).nullable().default(null),
  note: optional(400),
  sure: tick,
}

const limit = decimal.refine(text => isLimitPerDay(Number(text)), saying('runIn.limitPerDay'))

const startInput = z.strictObject({
  repairId: id,
  placeId: id,
  start: openMoment,
  limitPerDay: limit.nullable().default(null),
  steadyWithin: limit.nullable().default(null),
  error: error.nullable().default('0'),
})

const reason = required(400)

const passInput = z.strictObject({
  runId: id,
  reason: optional(400),
  seen: z.strictObject({ verdict: oneOf(['may-pass', 'not-yet', 'regulate', 'begin-again']) }).nullable(),
})

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
  .post('/pass', body(passInput), c => perform(c, book.pass, c.req.valid('json')))
  .post('/restart', body(z.strictObject({ runId: id, reason, error: error.nullable().default('0') })), c =>
    perform(c, book.restart, c.req.valid('json')),
  )
  .post('/toBench', body(z.strictObject({ runId: id, reason })), c =>
    perform(c, book.toBench, c.req.valid('json')),
  )
  .post('/move', body(z.strictObject({ runId: id, placeId: id, noted: z.boolean().default(true) })), c =>
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
