import { gatherList } from '../checked.ts'
import { decimalOf, tenTo } from '../decimal/decimal.ts'
import { divRound } from '../money/div-round.ts'
import { type Minor, minor } from '../money/minor.ts'
import type { PricedItem } from '../pricing/items.ts'
import { bad, type Checked, good, problem } from '../problems.ts'
import type { Category, TaxBreakdown } from './model.ts'

/** The one category of an item; `eInvoice.severalTaxes` where it bears more than one tax, which the standard cannot say. */
function categoryOf({ taxes }: PricedItem, index: number): Checked<Category> {
  const [tax] = taxes
  if (taxes.length > 1) return bad([problem('eInvoice.severalTaxes', `lines[${index}].taxes`)])
  if (!tax) return good({ code: 'E', rate: '0' })
  return good({ code: tax.rate === '0' ? 'Z' : 'S', rate: tax.rate })
}

/** Each item's category, or the problems of all of them. */
export const categories = (items: readonly PricedItem[]): Checked<Category[]> =>
  gatherList(items.map(categoryOf))

/** round(taxable × rate ÷ 100), half up (BR-CO-17). */
function taxOf(taxable: Minor, rate: string): Minor {
  const { units, scale } = decimalOf(rate) ?? { units: 0n, scale: 0 }
  return minor(Number(divRound(BigInt(taxable) * units, 100n * tenTo(scale), 'half-up')))
}

/**
 * The tax by category and rate. `eInvoice.taxRounding` where a group's tax is not its taxable amount × rate rounded once, as
 * the standard demands: tax rounded line by line or down, or taken out of prices that contain it, can differ by a unit, and
 * an e-invoice may not say another sum than the paper.
 */
export function breakdown(
  items: readonly PricedItem[],
  own: readonly Category[],
  sign: 1 | -1,
): Checked<TaxBreakdown[]> {
  const groups = new Map<string, TaxBreakdown>()
  items.forEach(({ net, taxes }, index) => {
    const { code, rate } = own[index] ?? { code: 'E', rate: '0' }
    const { taxable, tax } = groups.get(`${code} ${rate}`) ?? { taxable: 0, tax: 0 }
    groups.set(`${code} ${rate}`, {
      code,
      rate,
      taxable: minor(taxable + sign * net),
      tax: minor(tax + sign * (taxes[0]?.tax ?? 0)),
    })
  })
  return gatherList([...groups.values()].map(obeys))
}

const obeys = (group: TaxBreakdown): Checked<TaxBreakdown> =>
  taxOf(group.taxable, group.rate) === group.tax
    ? good(group)
    : bad([problem('eInvoice.taxRounding', 'tax', { rate: group.rate })])
