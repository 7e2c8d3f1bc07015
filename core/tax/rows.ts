import { gatherList, whenGood } from '../checked.ts'
import { type Minor, minor } from '../money/minor.ts'
import { type PricedContents, pricedParts, priceInputOf } from '../papers/price-input.ts'
import { pricedItems } from '../pricing/items.ts'
import type { LineKind } from '../pricing/kinds/index.ts'
import { type Checked, good } from '../problems.ts'

/** What one kind of line bears of one tax, in minor units. */
export interface TaxRow {
  /** The tax's code in the shop's books; '' on what bears no tax. */
  readonly code: string
  /** Percent, the shortest decimal text. */
  readonly rate: string
  /** '' stands for allowances and charges on the whole document. */
  readonly kind: LineKind | ''
  readonly taxable: Minor
  readonly tax: Minor
}

const untaxed = { code: '', rate: '0', tax: minor(0) }

/**
 * The tax of a frozen document by code, rate and kind of line. A group's tax that was rounded once is shared out over its
 * lines by largest remainder, so that the kinds add up to the group's tax exactly.
 */
export const taxRows = (contents: PricedContents): Checked<TaxRow[]> =>
  whenGood(gatherList(pricedParts(contents).map(borne)), rows => good(addedUp(rows.flat())))

/** What each line of a document that is priced by itself bears. */
const borne = (contents: PricedContents): Checked<TaxRow[]> =>
  whenGood(pricedItems(priceInputOf(contents)), items =>
    good(
      items.flatMap(({ net, taxes }, index) =>
        (taxes.length > 0 ? taxes : [untaxed]).map(tax => ({
          ...tax,
          kind: contents.lines[index]?.kind ?? '',
          taxable: net,
        })),
      ),
    ),
  )

/** Rows of like code, rate and kind made one, in the order they first come. */
export function addedUp(rows: readonly TaxRow[]): TaxRow[] {
  const sums = new Map<string, TaxRow>()
  for (const row of rows) {
    const key = `${row.kind} ${row.rate} ${row.code}`
    const { taxable, tax } = sums.get(key) ?? { taxable: 0, tax: 0 }
    const { code, rate, kind } = row
    sums.set(key, { code, rate, kind, taxable: minor(taxable + row.taxable), tax: minor(tax + row.tax) })
  }
  return [...sums.values()]
}

/** The rows with every amount turned to its opposite. */
export const turned = (rows: readonly TaxRow[]): TaxRow[] =>
  rows.map(row => ({ ...row, taxable: minor(-row.taxable), tax: minor(-row.tax) }))
