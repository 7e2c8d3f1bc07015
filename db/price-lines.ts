import type { PaperLine } from '../core/papers/contents.ts'
import { lineWorking } from '../core/pricing/line-working.ts'
import { type Priced, priced } from '../core/pricing/price.ts'
import type { PriceLine, Tax, TaxRules } from '../core/pricing/price-input.ts'
import type { Settings } from '../core/shop/settings.ts'
import { Refusal } from './refusal.ts'

/** A line as written on an estimate or an invoice; its taxes follow from its kind where none are given. */
export interface LineEntry {
  readonly kind: PriceLine['kind']
  readonly description: string
  /** Decimal text. */
  readonly quantity: string
  /** Unit price in major units, decimal text. */
  readonly unit: string
  readonly taxes: readonly Tax[] | null
  readonly partId: number | null
  readonly outsideWorkId: number | null
  readonly findingId: number | null
}

/** The shop's tax rules as they go on a document. */
export const taxRules = ({ tax }: Settings): TaxRules => ({
  basis: tax.basis,
  mode: tax.mode,
  inclusive: tax.inclusive,
  ...(tax.aggregate === undefined ? {} : { aggregate: tax.aggregate }),
})

/** The lines as a paper carries them and the document they price to; refuses with every problem in them, field by field. */
export function pricedLines(
  entries: readonly LineEntry[],
  settings: Settings,
  paid = '0',
): { lines: PaperLine[]; priced: Priced; tax: TaxRules } {
  const lines = entries.map(({ kind, description, quantity, unit, taxes }) => ({
    kind,
    description,
    quantity,
    unit,
    taxes: taxes ?? settings.tax.byKind[kind],
  }))
  const tax = taxRules(settings)
  const result = priced({ currency: settings.place.currency, tax, lines, paid })
  if (!result.ok) throw new Refusal(result.problems)
  const net = (index: number) => result.value.lines[index]?.net ?? result.value.sum
  return {
    tax,
    priced: result.value,
    lines: lines.map((line, index) => ({ ...line, net: net(index), working: lineWorking(line) })),
  }
}
