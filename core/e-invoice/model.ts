import type { Minor } from '../money/minor.ts'

/*
 * An invoice or credit note in the terms of EN 16931-1 (the BT numbers), all amounts as the standard wants them: a credit
 * note's are positive where it gives money back.
 */

/** VAT categories (UNCL 5305) that occur here: taxed, taxed at nothing, and without tax. */
export type CategoryCode = 'S' | 'Z' | 'E'

export interface Category {
  readonly code: CategoryCode
  /** Percent, decimal text. */
  readonly rate: string
}

export interface Party {
  readonly name: string
  readonly addressLines: readonly string[]
  /** ISO 3166-1 alpha-2. */
  readonly country: string
  readonly phone?: string
  readonly email?: string
}

/** The shop; its registration is a VAT identifier (BT-31) where it begins with the country's code, else BT-32. */
export interface Seller extends Party {
  readonly registration: { readonly scheme: 'VAT' | 'TAX'; readonly id: string }
}

/** An allowance (BG-20, BG-27) or charge (BG-21, BG-28); `amount` is never negative. */
export interface Adjustment {
  readonly charge: boolean
  readonly amount: Minor
  readonly reason: string
}

export interface InvoiceLine {
  readonly name: string
  /** BT-129, decimal text. */
  readonly quantity: string
  /** BT-130, UN/ECE Recommendation 20. */
  readonly unitCode: string
  /** BT-131. */
  readonly net: Minor
  /** BT-146, decimal text in major units with all its places. */
  readonly price: string
  /** BT-149: what the price is for, decimal text. */
  readonly per: string
  readonly adjustments: readonly Adjustment[]
  readonly category: Category
}

/** BG-23. */
export interface TaxBreakdown extends Category {
  readonly taxable: Minor
  readonly tax: Minor
}

/** BG-22. */
export interface Totals {
  readonly lines: Minor
  readonly allowances: Minor
  readonly charges: Minor
  readonly taxExclusive: Minor
  readonly tax: Minor
  readonly taxInclusive: Minor
  readonly paid: Minor
  readonly rounding: Minor
  readonly due: Minor
}

export interface EInvoice {
  readonly kind: 'invoice' | 'credit-note'
  readonly number: string
  readonly issuedOn: string
  readonly dueOn?: string
  readonly currency: string
  readonly note?: string
  /** The invoice that a credit note corrects. */
  readonly corrects?: { readonly number: string; readonly issuedOn: string }
  readonly seller: Seller
  readonly buyer: Party
  readonly lines: readonly InvoiceLine[]
  readonly adjustments: readonly (Adjustment & { readonly category: Category })[]
  readonly taxes: readonly TaxBreakdown[]
  readonly totals: Totals
}
