import type { BookAsked } from '../../core/pricing/book-line.ts'
import type { LineKind } from '../../core/pricing/kinds/index.ts'
import { priced } from '../../core/pricing/price.ts'
import { lineTaxes, taxRules } from '../../core/shop/tax-rules.ts'
import type { LineWork } from '../../core/vocabulary/work.ts'
import { type LinesState, useLines } from '../parts/entry.ts'
import type { Shop } from '../shop.tsx'

/** A line of an estimate or an invoice as typed, or as the price book wrote it. */
export interface TypedLine {
  readonly kind: LineKind
  readonly description: string
  readonly quantity: string
  readonly unit: string
  /** Added to quantity × unit, as for rush work. */
  readonly charge: string
  readonly work: LineWork | null
  /** What was asked of the price book; null as soon as its figures are changed by hand. */
  readonly priced: BookAsked | null
  readonly partId: number | null
  readonly findingId: number | null
}

export const blankLine: TypedLine = {
  kind: 'labour',
  description: '',
  quantity: '1',
  unit: '',
  charge: '0',
  work: null,
  priced: null,
  partId: null,
  findingId: null,
}

const isBlank = ({ description, quantity, unit }: TypedLine) => !description && quantity === '1' && !unit

/** The lines being typed, beginning with `initial`; `path` is where they stand in the request. */
export const useMoneyLines = (initial: readonly TypedLine[], path = 'lines'): LinesState<TypedLine> =>
  useLines(path, blankLine, isBlank, initial)

/** What the typed lines come to under the shop's rules; nothing while a figure in them cannot be read. */
export function sumsOf(lines: LinesState<TypedLine>, { settings }: Shop) {
  const written = lines.lines
    .filter(one => !one.blank)
    .map(({ line }) => ({ ...line, taxes: lineTaxes(line, settings.tax) }))
  const sums = priced({ currency: settings.place.currency, tax: taxRules(settings.tax), lines: written })
  return written.length > 0 && sums.ok ? sums.value : undefined
}
