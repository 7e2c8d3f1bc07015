import { Hono } from 'hono'
import { z } from 'zod'
import { paymentMethods } from '../../core/vocabulary/work.ts'
import { creditInvoice, refund, takePayment, writeInvoice } from '../../db/books/accounts.ts'
import { body } from './body.ts'
import { amount, id, oneOf, openAmount, optional, optionalLines, required } from './fields.ts'
import { lines } from './lines.ts'
import { type Env, perform } from './perform.ts'

const payment = z.strictObject({
  repairId: id,
  amount,
  method: oneOf(paymentMethods),
  reference: optional(),
  tendered: openAmount,
})

/** Acts of money. */
export const accounts = new Hono<Env>()
  .post('/invoice', body(z.strictObject({ repairId: id, lines, notes: optionalLines(2000) })), c =>
    perform(c, writeInvoice, c.req.valid('json')),
  )
  .post('/pay', body(payment), c => perform(c, takePayment, c.req.valid('json')))
  .post('/refund', body(payment), c => perform(c, refund, c.req.valid('json')))
  .post('/credit', body(z.strictObject({ invoiceId: id, reason: required(400) })), c =>
    perform(c, creditInvoice, c.req.valid('json')),
  )
