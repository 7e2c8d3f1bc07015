import { Hono } from 'hono'
import { z } from 'zod'
import { benchSteps } from '../../../core/bench/steps.ts'
import { longestStretchMinutes } from '../../../core/labour/minutes.ts'
import { mostPieces } from '../../../core/stores/pieces.ts'
import { components } from '../../../core/vocabulary/intake.ts'
import { asFoundMarks, tasks, waitReasons, works } from '../../../core/vocabulary/work.ts'
import * as book from '../../../db/books/bench.ts'
import * as labour from '../../../db/books/labour.ts'
import * as used from '../../../db/books/parts-used.ts'
import { backToBench, declareReady } from '../../../db/books/ready.ts'
import { body } from './body.ts'
import { count, id, oneOf, openAmount, openDate, optional, required, requiredLines, tick } from './fields.ts'
import { openMoment, vendor } from './moment.ts'
import { type Env, perform } from './perform.ts'

const labourInput = z.strictObject({
  repairId: id,
  task: oneOf(tasks),
  from: openMoment,
  to: openMoment,
  minutes: count(1, longestStretchMinutes).nullable().default(null),
  on: openDate,
  note: optional(400),
})

const findingInput = z.strictObject({
  repairId: id,
  component: oneOf(components),
  text: requiredLines(2000),
  needsWord: tick,
})

const outsideInput = z.strictObject({
  repairId: id,
  ...vendor,
  description: required(400),
  work: oneOf(works).nullable().default(null),
  dueOn: openDate,
  cost: openAmount,
  price: openAmount,
})

const reason = required(400)
const pieces = count(1, mostPieces)

const useInput = z.strictObject({
  repairId: id,
  partId: id,
  quantity: pieces.default(1),
  atShopsCost: tick,
})

/** Acts at the bench. */
export const bench = new Hono<Env>()
  .post('/startLabour', body(z.strictObject({ repairId: id, task: oneOf(tasks), switch: tick })), c =>
    perform(c, labour.startLabour, c.req.valid('json')),
  )
  .post('/stopLabour', body(z.strictObject({ endedAt: openMoment })), c =>
    perform(c, labour.stopLabour, c.req.valid('json')),
  )
  .post('/enterLabour', body(labourInput), c => perform(c, labour.enterLabour, c.req.valid('json')))
  .post('/strikeLabour', body(z.strictObject({ entryId: id, reason })), c =>
    perform(c, labour.strikeLabour, c.req.valid('json')),
  )
  .post('/find', body(findingInput), c => perform(c, book.find, c.req.valid('json')))
  .post('/strikeFinding', body(z.strictObject({ findingId: id, reason })), c =>
    perform(c, book.strikeFinding, c.req.valid('json')),
  )
  .post(
    '/noteAsFound',
    body(z.strictObject({ repairId: id, mark: oneOf(asFoundMarks), text: requiredLines(2000) })),
    c => perform(c, book.noteAsFound, c.req.valid('json')),
  )
  .post('/strikeAsFound', body(z.strictObject({ asFoundId: id, reason })), c =>
    perform(c, book.strikeAsFound, c.req.valid('json')),
  )
  .post('/tickStep', body(z.strictObject({ repairId: id, step: oneOf(benchSteps), done: z.boolean() })), c =>
    perform(c, book.tickStep, c.req.valid('json')),
  )
  .post('/acknowledge', body(z.strictObject({ repairId: id })), c =>
    perform(c, book.acknowledge, c.req.valid('json')),
  )
  .post('/wait', body(z.strictObject({ repairId: id, reason: oneOf(waitReasons), note: optional(400) })), c =>
    perform(c, book.wait, c.req.valid('json')),
  )
  .post('/endWait', body(z.strictObject({ waitId: id })), c => perform(c, book.endWait, c.req.valid('json')))
  .post('/sendOut', body(outsideInput), c => perform(c, book.sendOut, c.req.valid('json')))
  .post('/takeBack', body(z.strictObject({ outsideWorkId: id, cost: openAmount, price: openAmount })), c =>
    perform(c, book.takeBack, c.req.valid('json')),
  )
  .post('/usePart', body(useInput), c => perform(c, used.takePart, c.req.valid('json')))
  .post(
    '/putBack',
    body(z.strictObject({ moveId: id, quantity: pieces.default(1), reason: optional(400) })),
    c => perform(c, used.putBack, c.req.valid('json')),
  )
  .post('/order', body(z.strictObject({ repairIds: z.array(id).max(2000) })), c =>
    perform(c, book.order, c.req.valid('json')),
  )
  .post('/declareReady', body(z.strictObject({ repairId: id, reason })), c =>
    perform(c, declareReady, c.req.valid('json')),
  )
  .post('/backToBench', body(z.strictObject({ repairId: id, reason })), c =>
    perform(c, backToBench, c.req.valid('json')),
  )
