import { zValidator } from '@hono/zod-validator'
import { Hono } from 'hono'
import { z } from 'zod'
import { benchView } from '../../../db/read/bench.ts'
import { custodyView } from '../../../db/read/custody.ts'
import { figuresView } from '../../../db/read/reports.ts'
import { runView, shelfView } from '../../../db/read/shelf.ts'
import { partView, storesView } from '../../../db/read/stores.ts'
import { todayView } from '../../../db/read/today.ts'
import { refuseInput } from '../problems.ts'
import { query } from './body.ts'
import { civilDate } from './fields.ts'
import type { Env } from './perform.ts'

const byId = zValidator('param', z.object({ id: z.coerce.number().int().positive() }), refuseInput)

/** Views of the bench, the stores and the shelf. They never change anything. */
export const workPages = new Hono<Env>()
  .get('/bench', c => c.json(benchView(c.var.ledger.read, c.var.doing.at)))
  .get('/stores', c => c.json(storesView(c.var.ledger.read, c.var.doing.at)))
  .get('/parts/:id', byId, c => c.json(partView(c.var.ledger.read, c.req.valid('param').id)))
  .get('/shelf', c => c.json(shelfView(c.var.ledger.read, c.var.doing.at)))
  .get('/runs/:id', byId, c => c.json(runView(c.var.ledger.read, c.req.valid('param').id, c.var.doing.at)))
  .get('/custody', c => c.json(custodyView(c.var.ledger.read, c.var.doing.at)))
  .get('/figures', query(z.object({ from: civilDate, to: civilDate })), c => {
    const { from, to } = c.req.valid('query')
    return c.json(figuresView(c.var.ledger.read, from, to, c.var.doing.at))
  })
  .get('/today', c => c.json(todayView(c.var.ledger.read, c.var.doing.at)))
