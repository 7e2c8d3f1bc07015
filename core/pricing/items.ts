import { gatherList, whenGood } from '../checked.ts'
import { type Minor, minor, minorOf } from '../money/minor.ts'
import { type Checked, good } from '../problems.ts'
import { type PriceInput, parsedDocument, taxableItems } from './price.ts'
import { type ItemTax, taxByItem, taxed } from './taxed.ts'

/** One line, allowance or charge of a priced document, in minor units. */
export interface PricedItem {
  /** Without tax; an allowance's is negative. */
  readonly net: Minor
  /** What it bears of each group's tax; the parts of a group add up to its tax exactly. */
  readonly taxes: readonly { readonly code: string; readonly rate: string; readonly tax: Minor }[]
}

/** Every item of the document in order (lines, allowances, charges), or every problem in it. */
export const pricedItems = (input: PriceInput): Checked<PricedItem[]> =>
  whenGood(parsedDocument(input), document => {
    const items = taxableItems(document)
    const nets = gatherList(taxed(items, input.tax, input.partOf).nets.map(net => minorOf(net, 'lines')))
    return whenGood(nets, all => good(withTaxes(all, taxByItem(items, input.tax, input.partOf))))
  })

function withTaxes(nets: readonly Minor[], borne: readonly ItemTax[]): PricedItem[] {
  const taxes = nets.map((): PricedItem['taxes'][number][] => [])
  for (const { index, code, rate, tax } of borne) taxes[index]?.push({ code, rate, tax: minor(Number(tax)) })
  return nets.map((net, index) => ({ net, taxes: taxes[index] ?? [] }))
}
