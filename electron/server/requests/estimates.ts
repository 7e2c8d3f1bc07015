import { Hono } from 'hono'
import { z } from 'zod'
import { ways } from '../../../core/vocabulary/work.ts'
import { sendEstimate, writeEstimate } from '../../../db/books/estimates.ts'
import { recordWord } from '../../../db/books/owner-word.ts'
import { body } from './body.ts'
import { id, list, oneOf, openAmount, optional, optionalLines, required, tick } from './fields.ts'
import { lines } from './lines.ts'
import { type Env, perform } from './perform.ts'

/** The last of its kind that the writer has seen, or that there was none; null where nobody looked, as in older day books. */
const lastSeen = z.strictObject({ last: id.nullable() }).nullable()

const section = z.strictObject({ repairId: id, supplement: tick, lines, high: openAmount })

const writeInput = section.extend({
  remark: optionalLines(2000),
  others: list(section, 50).default([]),
  seen: lastSeen,
})

const answered = z.strictObject({
  estimateId: id,
  answer: oneOf(['go-ahead', 'declined']),
  limit: openAmount,
  seen: lastSeen,
})

const wordInput = answered.extend({
  who: required(),
  way: oneOf(ways),
  remark: optional(400),
  others: list(answered, 50).default([]),
})

/** Acts on estimates and the owner's word. */
export const estimates = new Hono<Env>()
  .post('/write', body(writeInput), c => perform(c, writeEstimate, c.req.valid('json')))
  .post('/send', body(z.strictObject({ estimateId: id, way: oneOf(ways) })), c =>
    perform(c, sendEstimate, c.req.valid('json')),
  )
  .post('/recordWord', body(wordInput), c => perform(c, recordWord, c.req.valid('json')))
