import type { Minor } from '../money/minor.ts'
import { type Problem, problem } from '../problems.ts'

/** What was said of the cost over the counter, in minor units, tax included; each end only where it was told. */
export interface QuotedRange {
  readonly low?: Minor | undefined
  readonly high?: Minor | undefined
}

/** All that was said of the cost: the range, and a fee for the estimate. */
export interface SaidOfCost extends QuotedRange {
  readonly fee?: Minor | undefined
}

/** `estimate.highBelowLow` on `field` where the upper end lies below the lower one; an end that was not told is never wrong. */
export const rangeProblems = (low: Minor | null, high: Minor | null, field: string): Problem[] =>
  low !== null && high !== null && high < low ? [problem('estimate.highBelowLow', field)] : []

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
