import { Hono } from 'hono'
import { z } from 'zod'
import { found } from '../../db/read/find.ts'
import { query } from './body.ts'
import { oneOf } from './fields.ts'
import type { Env } from './perform.ts'

const asked = z.object({
  q: z.string().max(200),
  kind: oneOf(['owner', 'clock', 'repair', 'paper']).optional(),
})

/** Finding anything: `?q=` what was typed so far, `&kind=` of one kind only. */
export const find = new Hono<Env>().get('/', query(asked), c => {
  const { q, kind } = c.req.valid('query')
  return c.json({ results: found(c.var.ledger.read, q, kind ?? null) })
})
