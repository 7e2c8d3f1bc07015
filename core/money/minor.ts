import { type Decimal, parseDecimal, tenTo } from '../decimal/decimal.ts'
import { bad, type Checked, good, problem } from '../problems.ts'
import { type MinorDigits, minorDigits } from './currency.ts'
import { divRound } from './div-round.ts'

declare const minorUnits: unique symbol

/**
 * An amount of money in the currency's minor units (cents, pence, yen): a safe integer, never a float of major
 * units.
 */
export type Minor = number & { readonly [minorUnits]: true }

/**
 * The integer `n` as an amount in minor units. Throws a RangeError when it is not a safe integer: that is a bug,
 * not input.
 */
export function minor(n: number): Minor {
  if (!Number.isSafeInteger(n)) throw new RangeError(`not a whole number of minor units: ${n}`)
  return (Object.is(n, -0) ? 0 : n) as Minor
}

const largest = BigInt(Number.MAX_SAFE_INTEGER)

/** The exact amount as Minor; `money.tooLarge` on `field` beyond ±(2^53 − 1), so that nothing is ever lost silently. */
export function minorOf(amount: bigint, field: string): Checked<Minor> {
  if (amount > largest || amount < -largest) return bad([problem('money.tooLarge', field)])
  return good(minor(Number(amount)))
}

/** The minor digits of the currency; `money.unknownCurrency` on `field`. */
export function currencyDigits(currency: string, field = 'currency'): Checked<MinorDigits> {
  const digits = minorDigits(currency)
  return digits === undefined ? bad([problem('money.unknownCurrency', field, { currency })]) : good(digits)
}

/**
 * The amount typed in major units, exact: `money.notADecimal`, `money.tooPrecise` when it has more places than the
 * currency, `money.tooLarge`, `money.unknownCurrency`.
 */
export function parseMinor(text: string, currency: string, field: string): Checked<Minor> {
  const digits = currencyDigits(currency)
  return digits.ok ? parseMinorExact(text, digits.value, field) : digits
}

/** As `parseMinor`, for a currency of that many digits. */
export function parseMinorExact(text: string, digits: MinorDigits, field: string): Checked<Minor> {
  const amount = parseMoney(text, field)
  if (!amount.ok) return amount
  const { n, d } = minorFraction(amount.value, digits)
  if (n % d !== 0n) return bad([problem('money.tooPrecise', field, { text, digits })])
  return minorOf(n / d, field)
}

/** As `parseMinor`, and `number.negative` below zero. */
export function parseAmount(text: string, currency: string, field: string): Checked<Minor> {
  const amount = parseMinor(text, currency, field)
  return amount.ok && amount.value < 0 ? bad([problem('number.negative', field)]) : amount
}

/** The amount typed in major units, rounded half up to the currency's minor unit. */
export function parseMinorRounded(text: string, digits: MinorDigits, field: string): Checked<Minor> {
  const amount = parseMoney(text, field)
  if (!amount.ok) return amount
  const { n, d } = minorFraction(amount.value, digits)
  return minorOf(divRound(n, d, 'half-up'), field)
}

/** An amount typed in major units, of any precision; `money.notADecimal`. */
export function parseMoney(text: string, field: string): Checked<Decimal> {
  const amount = parseDecimal(text, field)
  return amount.ok ? amount : bad([problem('money.notADecimal', field, { text })])
}

const minorFraction = ({ units, scale }: Decimal, digits: MinorDigits) => ({
  n: units * tenTo(digits),
  d: tenTo(scale),
})

/**
 * The sum; `money.tooLarge` on `field` beyond 2^53 − 1. Exact whatever the order, also where a partial sum is
 * beyond it.
 */
export const sumMinor = (amounts: readonly Minor[], field = ''): Checked<Minor> =>
  minorOf(
    amounts.reduce((sum, amount) => sum + BigInt(amount), 0n),
    field,
  )

/**
 * The amount in major units with all the currency's places, as `-1234.50`. Throws a RangeError on an unknown
 * currency.
 */
export function minorText(amount: Minor | bigint, currency: string): string {
  const digits = minorDigits(currency)
  if (digits === undefined) throw new RangeError(`not a currency: ${currency}`)
  const sign = amount < 0 ? '-' : ''
  const figures = (amount < 0 ? -amount : amount).toString().padStart(digits + 1, '0')
  if (digits === 0) return sign + figures
  return `${sign}${figures.slice(0, -digits)}.${figures.slice(-digits)}`
}
