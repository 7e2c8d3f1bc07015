import type { RoundingMode } from '../money/div-round.ts'
import type { Minor } from '../money/minor.ts'
import type { LineKind } from './kinds/index.ts'

/** A tax on a line: its code in the shop's books and its rate in percent, a decimal text such as `8.875`. */
export interface Tax {
  readonly code: string
  readonly rate: string
}

/** How a document's tax is reckoned. It is stored with the document, so that an old document recomputes identically. */
export interface TaxRules {
  /** Tax rounded on each line, or once on the sum of each group of equal code and rate. */
  readonly basis: 'line' | 'group'
  readonly mode: RoundingMode
  /** Prices contain the tax. */
  readonly inclusive: boolean
  /** The rates of a line's taxes are added before rounding (SSUTA §324). */
  readonly aggregate?: boolean | undefined
}

/** One line of a document; figures are decimal texts in major units. A negative quantity is a credit. */
export interface PriceLine {
  readonly kind: LineKind
  readonly quantity: string
  /** Price of `per` units, before tax unless the rules say inclusive; any number of places. */
  readonly unit: string
  readonly per?: string | undefined
  readonly unitDiscount?: string | undefined
  readonly allowance?: string | undefined
  readonly charge?: string | undefined
  readonly taxes: readonly Tax[]
}

/** An allowance or a charge on the whole document, taxed like a line. */
export interface DocumentAmount {
  readonly amount: string
  readonly taxes: readonly Tax[]
}

/** An amount with the tax on it, in minor units; the amount contains the tax where the rules say that prices do. */
export interface AmountTaxed {
  readonly amount: Minor
  readonly tax: Minor
}

/**
 * One group of taxes of a document that is taken back in parts: what it bears in the whole, and what was taken back of it before.
 * Its tax is then a share of the whole's, so that all parts together take back exactly the whole tax.
 */
export interface TaxPart extends Tax {
  readonly whole: AmountTaxed
  readonly before: AmountTaxed
}

/** A document to be priced. */
export interface PriceInput {
  readonly currency: string
  readonly tax: TaxRules
  readonly lines: readonly PriceLine[]
  readonly allowances?: readonly DocumentAmount[] | undefined
  readonly charges?: readonly DocumentAmount[] | undefined
  readonly paid?: string | undefined
  /** Added to what is due, as where cash is rounded; not a matter of tax. */
  readonly rounding?: string | undefined
  /** Where it takes back a part of another document; its own amounts are then below nothing. */
  readonly partOf?: readonly TaxPart[] | undefined
}
