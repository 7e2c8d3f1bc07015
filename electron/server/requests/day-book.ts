import { Hono } from 'hono'
import { z } from 'zod'
import { redact } from '../../../db/books/day-book.ts'
import { body } from './body.ts'
import { id, list, required } from './fields.ts'
import { type Env, perform } from './perform.ts'

const row = z.strictObject({ id, commitment: z.string().regex(/^[0-9a-f]{64}$/) })

/** Acts on the day book itself. */
export const dayBookActs = new Hono<Env>().post(
  '/redact',
  body(z.strictObject({ rows: list(row, 10_000, 1), reason: required(400) })),
  c => perform(c, redact, c.req.valid('json')),
)
