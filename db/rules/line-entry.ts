import type { BookAsked } from '../../core/pricing/book-line.ts'
import type { PriceLine, Tax } from '../../core/pricing/price-input.ts'
import type { LineWork } from '../../core/vocabulary/work.ts'

/** A line as written on an estimate or an invoice; its taxes follow from its kind where none are given. */
export interface LineEntry {
  readonly kind: PriceLine['kind']
  readonly description: string
  /** Decimal text. */
  readonly quantity: string
  /** Unit price in major units, decimal text. */
  readonly unit: string
  /** Added to quantity × unit, in major units. */
  readonly charge: string
  readonly taxes: readonly Tax[] | null
  readonly partId: number | null
  readonly outsideWorkId: number | null
  readonly findingId: number | null
  /** What the line is told to be, so that rules can go by it. */
  readonly work: LineWork | null
  /** What was asked of the price book for it; the figures are then the book's. */
  readonly priced: BookAsked | null
}
