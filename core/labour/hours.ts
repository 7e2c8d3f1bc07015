import { addDecimals, type Decimal, decimalOf } from '../decimal/decimal.ts'

/** Whole minutes of hours typed as decimal text, summed exactly and rounded once; texts that are no decimals count nothing. */
export function minutesOfHours(hours: readonly string[]): number {
  const sum = hours.reduce<Decimal>(
    (total, text) => addDecimals(total, decimalOf(text) ?? { units: 0n, scale: 0 }),
    { units: 0n, scale: 0 },
  )
  return Math.round((Number(sum.units) * 60) / 10 ** sum.scale)
}
