import { whenGood } from '../../../core/checked.ts'
import { type Minor, minorText } from '../../../core/money/minor.ts'
import {
  type Priced,
  type PriceInput,
  type PriceLine,
  priced,
  type Tax,
  type TaxRules,
} from '../../../core/pricing/price.ts'
import { good } from '../../../core/problems.ts'
import { calculation } from './calculation.ts'
import { choice, list, optional, quantity, record, text, yesNo } from './shape.ts'
import { currency, money, rate } from './shapes.ts'

const taxes = list(record<Tax>({ code: text('TAX'), rate }))
const amounts = optional(list(record({ amount: money, taxes })))

const document = record<Omit<PriceInput, 'partOf'>>({
  currency,
  tax: record<TaxRules>({
    basis: choice('line', 'group'),
    mode: choice('half-up', 'half-even', 'down'),
    inclusive: yesNo,
    aggregate: optional(yesNo),
  }),
  lines: list(
    record<PriceLine>({
      kind: choice('labour', 'part', 'outside', 'fee'),
      quantity,
      unit: money,
      per: optional(quantity),
      unitDiscount: optional(money),
      allowance: optional(money),
      charge: optional(money),
      taxes,
    }),
  ),
  allowances: amounts,
  charges: amounts,
  paid: optional(money),
  rounding: optional(money),
})

export default calculation(document, input =>
  whenGood(priced(input), result => good(printed(result, input.currency))),
)

function printed(result: Priced, code: string) {
  const written = (amount: Minor) => minorText(amount, code)
  return {
    lines: result.lines.map(({ net }) => ({ net: written(net) })),
    sum: written(result.sum),
    allowances: written(result.allowances),
    charges: written(result.charges),
    taxExclusive: written(result.taxExclusive),
    taxes: result.taxes.map(tax => ({ ...tax, taxable: written(tax.taxable), tax: written(tax.tax) })),
    tax: written(result.tax),
    taxInclusive: written(result.taxInclusive),
    paid: written(result.paid),
    rounding: written(result.rounding),
    due: written(result.due),
  }
}
