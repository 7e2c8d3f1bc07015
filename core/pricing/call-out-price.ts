import { gather, unless, whenGood } from '../checked.ts'
import { decimalText, parseNonNegative, subtractDecimals } from '../decimal/decimal.ts'
import { currencyDigits, minorText, parseAmount } from '../money/minor.ts'
import { times } from '../money/scaled.ts'
import type { WorkingStep } from '../papers/contents.ts'
import { type Checked, problem } from '../problems.ts'
import type { PriceBook } from './price-book.ts'
import { parsePrice, type Quoted, quoted } from './quoted.ts'

/** A visit: how far, in the shop's unit of distance as decimal text, and to how many clocks. */
export interface VisitAsked {
  readonly distance: string
  readonly clocks: number
}

/** The most clocks one visit is to. Our own bound, against a slip of the finger. */
export const mostClocksVisited = 1000

/**
 * A house call: the fee, the distance beyond what is free, and each clock after the first. Problems: `book.clocks`,
 * figures that are none.
 */
export function callOutPrice(
  { callOut }: PriceBook,
  { distance, clocks }: VisitAsked,
  currency: string,
): Checked<Quoted> {
  const wrongCount =
    Number.isInteger(clocks) && clocks >= 1 && clocks <= mostClocksVisited
      ? []
      : [problem('book.clocks', 'clocks')]
  const sum = (text: string, field: string) => parseAmount(text, currency, field)
  const figures = gather({
    digits: currencyDigits(currency),
    further: unless(wrongCount, () => BigInt(clocks - 1)),
    fee: sum(callOut.fee, 'callOut.fee'),
    distance: parseNonNegative(distance, 'distance'),
    free: parseNonNegative(callOut.freeDistance, 'callOut.freeDistance'),
    rate: parsePrice(callOut.perDistance, 'callOut.perDistance'),
    each: sum(callOut.eachFurtherClock, 'callOut.eachFurtherClock'),
  })
  return whenGood(figures, parts => {
    const { digits, further, fee, free, rate, each } = parts
    const beyond = subtractDecimals(parts.distance, free)
    const travel = beyond.units > 0n ? times(rate, beyond, digits) : 0n
    const steps: WorkingStep[] = [{ code: 'callOut', values: { fee: minorText(fee, currency) } }]
    if (travel > 0n)
      steps.push({ code: 'distance', values: { distance: decimalText(beyond), rate: decimalText(rate) } })
    if (further > 0n)
      steps.push({ code: 'furtherClocks', values: { clocks: clocks - 1, each: minorText(each, currency) } })
    return quoted(BigInt(fee) + travel + BigInt(each) * further, steps)
  })
}
