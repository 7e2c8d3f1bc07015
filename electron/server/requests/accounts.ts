import { Hono } from 'hono'
import { z } from 'zod'
import { moneyMethods, paymentMethods, writeOffCauses } from '../../../core/vocabulary/work.ts'
import { creditInvoice } from '../../../db/books/credits.ts'
import { countDrawer } from '../../../db/books/drawer.ts'
import { writeInvoice } from '../../../db/books/invoices.ts'
import { payBack, refund, takePayment } from '../../../db/books/payments.ts'
import { closePeriod } from '../../../db/books/periods.ts'
import { takeBackWriteOff, writeOff } from '../../../db/books/write-offs.ts'
import { body } from './body.ts'
import {
  amount,
  civilDate,
  count,
  decimal,
  id,
  list,
  oneOf,
  openAmount,
  openDate,
  optional,
  optionalLines,
  required,
  tick,
} from './fields.ts'
import { lines } from './lines.ts'
import { type Env, perform } from './perform.ts'

const money = { amount, reference: optional(), onDate: openDate }
const refunded = z.strictObject({ ...money, repairId: id, method: oneOf(paymentMethods) })
const paid = refunded.extend({ tendered: openAmount, restToAccount: tick })
const paidBack = z.strictObject({ ...money, ownerId: id, method: oneOf(moneyMethods) })

const invoice = z.strictObject({ repairId: id, lines, notes: optionalLines(2000), issuedOn: openDate })
const creditLine = z.strictObject({
  line: count(0, 999),
  quantity: decimal.nullable().default(null),
  amount: openAmount,
})
const credit = z.strictObject({
  invoiceId: id,
  lines: list(creditLine, 1000, 1).nullable().default(null),
  reason: required(400),
  issuedOn: openDate,
})

const writtenOff = z.strictObject({
  repairId: id,
  amount,
  cause: oneOf(writeOffCauses),
  reason: required(400),
  onDate: openDate,
})
const takenBack = writtenOff.omit({ amount: true, cause: true })
const counted = z.strictObject({ counted: amount, taken: amount.default('0'), remark: optional(400) })

/** Acts of money. */
export const accounts = new Hono<Env>()
  .post('/invoice', body(invoice), c => perform(c, writeInvoice, c.req.valid('json')))
  .post('/pay', body(paid), c => perform(c, takePayment, c.req.valid('json')))
  .post('/refund', body(refunded), c => perform(c, refund, c.req.valid('json')))
  .post('/payBack', body(paidBack), c => perform(c, payBack, c.req.valid('json')))
  .post('/credit', body(credit), c => perform(c, creditInvoice, c.req.valid('json')))
  .post('/writeOff', body(writtenOff), c => perform(c, writeOff, c.req.valid('json')))
  .post('/takeBackWriteOff', body(takenBack), c => perform(c, takeBackWriteOff, c.req.valid('json')))
  .post('/countDrawer', body(counted), c => perform(c, countDrawer, c.req.valid('json')))
  .post('/closePeriod', body(z.strictObject({ toDate: civilDate })), c =>
    perform(c, closePeriod, c.req.valid('json')),
  )
