import { Hono } from 'hono'
import { z } from 'zod'
import { found } from '../../db/read/find.ts'
import { query } from './body.ts'
import type { Env } from './perform.ts'

/** Finding anything: `?q=` what was typed so far. */
export const find = new Hono<Env>().get('/', query(z.object({ q: z.string().max(200) })), c =>
  c.json({ results: found(c.var.ledger.read, c.req.valid('query').q) }),
)
