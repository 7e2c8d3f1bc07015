import { z } from 'zod'
import { lineKinds } from '../../core/pricing/kinds/index.ts'
import { decimal, id, keyOf, list, required } from './fields.ts'

const tax = z.strictObject({ code: required(20), rate: decimal })

/** The lines of an estimate or an invoice. */
export const lines = list(
  z.strictObject({
    kind: keyOf(lineKinds),
    description: required(400),
    quantity: decimal,
    unit: decimal,
    taxes: list(tax, 10).nullable().default(null),
    partId: id.nullable().default(null),
    outsideWorkId: id.nullable().default(null),
    findingId: id.nullable().default(null),
  }),
  1000,
  1,
)
