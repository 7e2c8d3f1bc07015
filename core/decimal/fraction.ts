import { type Decimal, tenTo } from './decimal.ts'

/** An exact rational number n ÷ d with d > 0. */
export interface Fraction {
  readonly n: bigint
  readonly d: bigint
}

export const zero: Fraction = { n: 0n, d: 1n }

/** n ÷ d with the sign carried by the numerator. Throws a RangeError when d is 0. */
export function fraction(n: bigint, d: bigint): Fraction {
  if (d === 0n) throw new RangeError('division by zero')
  return d < 0n ? { n: -n, d: -d } : { n, d }
}

/** The decimal as a fraction. */
export const fractionOf = ({ units, scale }: Decimal): Fraction => ({ n: units, d: tenTo(scale) })

/** The sum of all, exact. Like denominators, the usual case in one document, stay as they are. */
export function sumFractions(all: readonly Fraction[]): Fraction {
  const byDenominator = new Map<bigint, bigint>()
  for (const { n, d } of all) byDenominator.set(d, (byDenominator.get(d) ?? 0n) + n)
  let sum = zero
  for (const [d, n] of byDenominator) sum = { n: sum.n * d + n * sum.d, d: sum.d * d }
  return sum
}
