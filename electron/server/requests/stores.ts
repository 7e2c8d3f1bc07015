import { Hono } from 'hono'
import { z } from 'zod'
import { dimensions } from '../../../core/stores/part-size.ts'
import { partKinds, springEnds } from '../../../core/vocabulary/work.ts'
import * as book from '../../../db/books/stores.ts'
import { body } from './body.ts'
import {
  amount,
  count,
  id,
  oneOf,
  openAmount,
  openDate,
  optional,
  required,
  saying,
  seenStamp,
} from './fields.ts'
import { vendor } from './moment.ts'
import { type Env, perform } from './perform.ts'

const most = 1_000_000

const size = z.strictObject({
  dimension: oneOf(dimensions),
  value: amount.refine(text => Number(text) > 0, saying('number.notPositive')),
  unit: oneOf(['mm', 'in']),
})

const part = {
  kind: oneOf(partKinds),
  name: required(),
  sizes: z.array(size).max(dimensions.length).default([]),
  ends: oneOf(['', ...springEnds]).default(''),
  ...vendor,
  keptAt: optional(80),
  unitCost: amount.default('0'),
  unitPrice: amount.default('0'),
  reorderAt: count(0, most).default(0),
}

const vendorEntry = { name: required(120), contact: optional(400) }

/** Acts in the stores. */
export const stores = new Hono<Env>()
  .post('/addVendor', body(z.strictObject(vendorEntry)), c => perform(c, book.addVendor, c.req.valid('json')))
  .post(
    '/changeVendor',
    body(z.strictObject({ vendorId: id, ...vendorEntry, seen: z.strictObject(vendorEntry).nullable() })),
    c => perform(c, book.changeVendor, c.req.valid('json')),
  )
  .post('/addPart', body(z.strictObject(part)), c => perform(c, book.addPart, c.req.valid('json')))
  .post(
    '/changePart',
    body(z.strictObject({ partId: id, ...part, active: z.boolean().default(true), seen: seenStamp })),
    c => perform(c, book.changePart, c.req.valid('json')),
  )
  .post(
    '/receive',
    body(z.strictObject({ partId: id, quantity: count(1, most), unitCost: openAmount, note: optional(400) })),
    c => perform(c, book.receiveParts, c.req.valid('json')),
  )
  .post('/count', body(z.strictObject({ partId: id, counted: count(0, most), note: required(400) })), c =>
    perform(c, book.countPart, c.req.valid('json')),
  )
  .post(
    '/order',
    body(
      z.strictObject({
        partId: id,
        repairId: id.nullable().default(null),
        ...vendor,
        quantity: count(1, most),
        dueOn: openDate,
      }),
    ),
    c => perform(c, book.orderParts, c.req.valid('json')),
  )
  .post(
    '/arrive',
    body(
      z.strictObject({
        orderId: id,
        quantity: count(1, most).nullable().default(null),
        unitCost: openAmount,
        note: optional(400),
      }),
    ),
    c => perform(c, book.arriveOrder, c.req.valid('json')),
  )
