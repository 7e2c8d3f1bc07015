import { divRound } from './div-round.ts'
import { type Minor, minor } from './minor.ts'

/**
 * The smallest amount paid in cash where it is larger than the minor unit, in major units. By currency: Unicode CLDR,
 * supplementalData, currencyData/fractions (`cashRounding`, `cashDigits`). HUF, AUD and NZD are not there so and stand from memory.
 */
const byCurrency: Readonly<Record<string, string>> = {
  CAD: '0.05',
  CHF: '0.05',
  CZK: '1',
  DKK: '0.50',
  NOK: '1',
  SEK: '1',
  AUD: '0.05',
  HUF: '5',
  NZD: '0.10',
}

/** Countries of the euro where cash is rounded to five cents. From memory. */
const euroCountries = ['BE', 'EE', 'FI', 'IE', 'IT', 'LT', 'NL', 'SK']

/** What a new shop in this country and currency rounds cash to, in major units; '0' where nothing is rounded. */
export const usualCashStep = (currency: string, country: string): string =>
  byCurrency[currency] ?? (currency === 'EUR' && euroCountries.includes(country) ? '0.05' : '0')

/** The amount to the nearest multiple of `step` minor units, halves away from nothing; as it is where `step` is 0. */
export const inCash = (amount: Minor, step: Minor): Minor =>
  step === 0 ? amount : minor(Number(divRound(BigInt(amount), BigInt(step), 'half-up')) * step)

/** What changes hands in cash, and what is taken off the debt beside it so that the rest of it is settled. */
export interface Cash {
  readonly amount: Minor
  readonly rounding: Minor
}

/**
 * The cash for `amount` typed where `open` is to be paid (both below nothing for money given back). The whole, typed exactly or
 * as cash pays it, is rounded and the difference settles the rest; any other amount must be one that cash can pay, or null.
 */
export function cashFor(amount: Minor, open: Minor, step: Minor): Cash | null {
  const whole = inCash(open, step)
  if (amount === open || amount === whole) return { amount: whole, rounding: minor(open - whole) }
  return inCash(amount, step) === amount ? { amount, rounding: minor(0) } : null
}

/** What changes hands for `amount` where `open` is to be paid: in cash what coins can pay (null where they cannot), by any other way all of it. */
export const changesHands = (cash: boolean, amount: Minor, open: Minor, step: Minor): Cash | null =>
  cash ? cashFor(amount, open, step) : { amount, rounding: minor(0) }

/** What of a payment is more than is open; never below nothing. */
export const restOf = ({ amount, rounding }: Cash, open: Minor): Minor =>
  minor(Math.max(amount + rounding - open, 0))
