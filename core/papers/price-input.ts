import { minorText } from '../money/minor.ts'
import type { PriceInput } from '../pricing/price-input.ts'
import type { PaperHead, PaperMoney } from './contents.ts'

/** The money of a paper with its currency. */
export type PricedContents = PaperMoney & Pick<PaperHead, 'currency'>

/** What a frozen paper was priced from: priced again it must come to the same figures, whatever the settings say by then. */
export const priceInputOf = ({
  currency,
  tax,
  lines,
  allowances,
  charges,
  priced,
}: PricedContents): PriceInput => ({
  currency,
  tax,
  lines,
  allowances,
  charges,
  paid: minorText(priced.paid, currency),
  rounding: minorText(priced.rounding, currency),
})
