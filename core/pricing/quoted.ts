import { whenGood } from '../checked.ts'
import type { Decimal } from '../decimal/decimal.ts'
import { type Minor, minorOf, parseMoney } from '../money/minor.ts'
import type { WorkingStep } from '../papers/contents.ts'
import { bad, type Checked, good, problem } from '../problems.ts'

/**
 * A price from the book, before tax, and how it came about; every figure in the working is a decimal text, money in
 * major units.
 */
export interface Quoted {
  readonly amount: Minor
  readonly working: readonly WorkingStep[]
}

/** The price with its working, or `money.tooLarge`. */
export const quoted = (amount: bigint, working: readonly WorkingStep[]): Checked<Quoted> =>
  whenGood(minorOf(amount, 'amount'), exact => good({ amount: exact, working }))

/** A price or cost typed in major units, of any precision: `money.notADecimal`, `number.negative`. */
export const parsePrice = (text: string, field: string): Checked<Decimal> =>
  whenGood(parseMoney(text, field), price =>
    price.units < 0n ? bad([problem('number.negative', field)]) : good(price),
  )
