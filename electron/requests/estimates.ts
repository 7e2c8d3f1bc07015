import { Hono } from 'hono'
import { z } from 'zod'
import { ways } from '../../core/vocabulary/work.ts'
import { recordWord, sendEstimate, writeEstimate } from '../../db/books/estimates.ts'
import { body } from './body.ts'
import { id, oneOf, openAmount, optional, optionalLines, required, tick } from './fields.ts'
import { lines } from './lines.ts'
import { type Env, perform } from './perform.ts'

const writeInput = z.strictObject({
  repairId: id,
  supplement: tick,
  lines,
  high: openAmount,
  remark: optionalLines(2000),
})

const wordInput = z.strictObject({
  estimateId: id,
  answer: oneOf(['go-ahead', 'declined']),
  who: required(),
  way: oneOf(ways),
  limit: openAmount,
  remark: optional(400),
})

/** Acts on estimates and the owner's word. */
export const estimates = new Hono<Env>()
  .post('/write', body(writeInput), c => perform(c, writeEstimate, c.req.valid('json')))
  .post('/send', body(z.strictObject({ estimateId: id, way: oneOf(ways) })), c =>
    perform(c, sendEstimate, c.req.valid('json')),
  )
  .post('/recordWord', body(wordInput), c => perform(c, recordWord, c.req.valid('json')))
