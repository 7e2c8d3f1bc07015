import { Hono } from 'hono'
import { z } from 'zod'
import { writeBackup } from '../backups.ts'
import { body } from './body.ts'
import type { Env } from './perform.ts'

/** Backing the ledger up: no act of the day book, for nothing in the ledger changes. */
export const backup = new Hono<Env>().post('/', body(z.strictObject({})), c => {
  const { file, at } = writeBackup(c.var.ledger, c.var.doing.at)
  return c.json({ file, at })
})
