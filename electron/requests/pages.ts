import { zValidator } from '@hono/zod-validator'
import { Hono } from 'hono'
import { z } from 'zod'
import * as accounts from '../../db/read/accounts.ts'
import { counterView } from '../../db/read/counter.ts'
import { clockView, ownersView, ownerView } from '../../db/read/register.ts'
import { repairView } from '../../db/read/repair.ts'
import { shopView } from '../../db/read/shop.ts'
import { asLiteral } from '../demo/day-references.ts'
import { refuseInput } from '../problems.ts'
import { query } from './body.ts'
import { civilDate, oneOf } from './fields.ts'
import type { Env } from './perform.ts'

const number = z
  .string()
  .regex(/^[1-9]\d{0,15}$/)
  .transform(Number)
const param = <T extends z.ZodRawShape>(shape: T) => zValidator('param', z.object(shape), refuseInput)
const openNumber = number.optional().transform(n => n ?? null)
const kinds = ['claim-check', 'estimate', 'invoice', 'receipt', 'credit-note', 'warranty'] as const
const period = query(z.object({ from: civilDate, to: civilDate }))

/** Views: what the pages show. They never change anything. */
export const pages = new Hono<Env>()
  .get('/shop', c => c.json(shopView(c.var.ledger.read, c.var.doing.at)))
  .get('/counter', c => c.json(counterView(c.var.ledger.read, c.var.doing.at)))
  .get('/repairs/:number', param({ number }), c =>
    c.json(repairView(c.var.ledger.read, c.req.valid('param').number, c.var.doing.at)),
  )
  .get('/owners', query(z.object({ afterName: z.string().optional(), afterId: openNumber })), c => {
    const { afterName, afterId } = c.req.valid('query')
    const after = afterName !== undefined && afterId !== null ? { name: afterName, id: afterId } : null
    return c.json(ownersView(c.var.ledger.read, after))
  })
  .get('/owners/:id', param({ id: number }), c =>
    c.json(ownerView(c.var.ledger.read, c.req.valid('param').id)),
  )
  .get('/clocks/:id', param({ id: number }), c =>
    c.json(clockView(c.var.ledger.read, c.req.valid('param').id, c.var.doing.at)),
  )
  .get(
    '/documents',
    query(
      z.object({
        kind: oneOf(kinds)
          .optional()
          .transform(k => k ?? null),
        before: openNumber,
      }),
    ),
    c => c.json(accounts.documentsView(c.var.ledger.read, c.req.valid('query'))),
  )
  .get('/owed', c => c.json(accounts.owedView(c.var.ledger.read)))
  .get('/tax', period, c => {
    const { from, to } = c.req.valid('query')
    return c.json(accounts.taxView(c.var.ledger.read, from, to))
  })
  .get('/payments', period, c => {
    const { from, to } = c.req.valid('query')
    return c.json(accounts.paymentsView(c.var.ledger.read, from, to))
  })
  .get('/dayBook', query(z.object({ before: openNumber })), c =>
    c.json(accounts.dayBookView(c.var.ledger.read, c.req.valid('query').before)),
  )
  .get('/dayFile', c =>
    c.json(accounts.dayBookActs(c.var.ledger.read).map(act => ({ ...act, with: asLiteral(act.with) }))),
  )
