import { z } from 'zod'
import { mostClocksVisited } from '../../../core/pricing/call-out-price.ts'
import { lineKinds } from '../../../core/pricing/kinds/index.ts'
import { mostPieces } from '../../../core/stores/pieces.ts'
import { lineWorks, works } from '../../../core/vocabulary/work.ts'
import { count, decimal, id, keyOf, list, oneOf, required, tick } from './fields.ts'

const tax = z.strictObject({ code: required(20), rate: decimal })

const priced = z.discriminatedUnion('from', [
  z.strictObject({
    from: z.literal('labour'),
    work: oneOf(works),
    furtherHours: decimal.default('0'),
    rush: tick,
  }),
  z.strictObject({ from: z.literal('part'), by: oneOf(['markup', 'price']), pieces: count(1, mostPieces) }),
  z.strictObject({ from: z.literal('outside'), work: oneOf(works).nullable().default(null), cost: decimal }),
  z.strictObject({
    from: z.literal('call-out'),
    distance: decimal.default('0'),
    clocks: count(1, mostClocksVisited),
  }),
  z.strictObject({ from: z.literal('estimate-fee') }),
  z.strictObject({ from: z.literal('fee-credit') }),
])

/** The lines of an estimate or an invoice. */
export const lines = list(
  z.strictObject({
    kind: keyOf(lineKinds),
    description: required(400),
    quantity: decimal,
    unit: decimal,
    charge: decimal.default('0'),
    taxes: list(tax, 10).nullable().default(null),
    partId: id.nullable().default(null),
    outsideWorkId: id.nullable().default(null),
    findingId: id.nullable().default(null),
    work: oneOf(lineWorks).nullable().default(null),
    priced: priced.nullable().default(null),
  }),
  1000,
  1,
)
