import { Hono } from 'hono'
import { z } from 'zod'
import { keepPapers } from '../../papers/frozen.ts'
import { body } from './body.ts'
import type { Env } from './perform.ts'

/** Backing the ledger up, with every paper issued so far: no act of the day book, for nothing is done with a clock or an owner. */
export const backup = new Hono<Env>().post('/', body(z.strictObject({})), async c => {
  await keepPapers(c.var.ledger)
  const { file, at } = await c.var.copies.copyNow()
  return c.json({ file, at })
})
