import type { Minor } from '../money/minor.ts'

/** What was said of the cost over the counter, in minor units, tax included; each end only where it was told. */
export interface QuotedRange {
  readonly low?: Minor | undefined
  readonly high?: Minor | undefined
}

/** All that was said of the cost: the range, and a fee for the estimate. */
export interface SaidOfCost extends QuotedRange {
  readonly fee?: Minor | undefined
}

/** Where an estimate leaves what was said before: above its upper end, or below its lower one; null where it keeps within. */
export function leavesQuoted(
  { low, high }: QuotedRange,
  totalMinor: Minor,
  highMinor: Minor | null,
): 'above' | 'below' | null {
  const most = highMinor ?? totalMinor
  if (high !== undefined && most > high) return 'above'
  return low !== undefined && most < low ? 'below' : null
}
