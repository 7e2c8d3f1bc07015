import { gatherList, whenGood } from '../checked.ts'
import { minorText } from '../money/minor.ts'
import { type Priced, priced as pricedDocument } from '../pricing/price.ts'
import type { PriceInput, TaxPart } from '../pricing/price-input.ts'
import { pricedTogether } from '../pricing/together.ts'
import type { Checked } from '../problems.ts'
import type { PaperHead, PaperMoney } from './contents.ts'

/** The money of a paper with its currency. */
export type PricedContents = PaperMoney &
  Pick<PaperHead, 'currency'> & {
    /** Parts that were priced each by itself; their lines are the paper's. */
    readonly sections?: readonly Omit<PaperMoney, 'tax'>[]
    /** Where it takes back a part of another paper: what of each tax. */
    readonly partOf?: readonly TaxPart[]
  }

/** What a frozen paper was priced from: priced again it must come to the same figures, whatever the settings say by then. */
export const priceInputOf = ({
  currency,
  tax,
  lines,
  allowances,
  charges,
  priced,
  partOf,
}: PricedContents): PriceInput => ({
  currency,
  tax,
  lines,
  allowances,
  charges,
  paid: minorText(priced.paid, currency),
  rounding: minorText(priced.rounding, currency),
  partOf,
})

/** What of a paper is priced by itself: its sections, or the whole. */
export const pricedParts = ({ sections, ...whole }: PricedContents): PricedContents[] =>
  sections?.map(({ lines, priced }) => ({ currency: whole.currency, tax: whole.tax, lines, priced })) ?? [
    whole,
  ]

/** What a frozen paper comes to, priced again from what it says. */
export const repriced = (contents: PricedContents): Checked<Priced> =>
  whenGood(gatherList(pricedParts(contents).map(part => pricedDocument(priceInputOf(part)))), pricedTogether)
