import fc from 'fast-check'
import { roundingModes } from '../../../core/money/div-round.ts'
import { lineKinds } from '../../../core/pricing/kinds/index.ts'
import type { PriceInput, Tax } from '../../../core/pricing/price-input.ts'

const kind = fc.constantFrom(...(Object.keys(lineKinds) as (keyof typeof lineKinds)[]))

const tax: fc.Arbitrary<Tax> = fc.record({
  code: fc.constantFrom('VAT', 'ST', 'CT'),
  rate: fc.constantFrom('0', '5', '7', '19', '20', '21', '8.875', '25.5'),
})

const taxes = fc.uniqueArray(tax, { maxLength: 2, selector: ({ code }) => code })

/** A decimal text of so many units at so many places. */
const decimal = (most: number, places: number) =>
  fc.integer({ min: 0, max: most }).map(units => (units / 10 ** places).toFixed(places))

const line = fc.record({
  kind,
  quantity: fc.oneof(
    decimal(4_000, 2),
    decimal(20, 0),
    decimal(300, 2).map(q => `-${q}`),
  ),
  unit: fc.oneof(decimal(90_000, 2), decimal(90_000, 4)),
  taxes,
})

const adjustment = fc.record({ amount: decimal(5_000, 2), taxes })

/** Documents of every kind of rule, with credits among the lines, untaxed lines and lines under two taxes. */
export const anyPriceInput: fc.Arbitrary<PriceInput> = fc.record({
  currency: fc.constantFrom('GBP', 'EUR', 'USD'),
  tax: fc.record({
    basis: fc.constantFrom('line' as const, 'group' as const),
    mode: fc.constantFrom(...roundingModes),
    inclusive: fc.boolean(),
    aggregate: fc.boolean(),
  }),
  lines: fc.array(line, { minLength: 1, maxLength: 8 }),
  allowances: fc.array(adjustment, { maxLength: 2 }),
  charges: fc.array(adjustment, { maxLength: 2 }),
})
