import type { Fraction } from '../decimal/fraction.ts'

/** How a value between two whole numbers is rounded; all three treat −x as the mirror of x. */
export type RoundingMode = 'half-up' | 'half-even' | 'down'

export const roundingModes = ['half-up', 'half-even', 'down'] as const satisfies readonly RoundingMode[]

/**
 * n ÷ d rounded to a whole number. Half up means half away from zero and down means toward zero, so that a credit
 * mirrors its invoice exactly. Throws a RangeError when d is 0.
 */
export function divRound(n: bigint, d: bigint, mode: RoundingMode): bigint {
  if (d === 0n) throw new RangeError('division by zero')
  const negative = n < 0n !== d < 0n
  const rounded = magnitudeRounded(n < 0n ? -n : n, d < 0n ? -d : d, mode)
  return negative ? -rounded : rounded
}

function magnitudeRounded(n: bigint, d: bigint, mode: RoundingMode): bigint {
  const floor = n / d
  if (mode === 'down') return floor
  const twice = (n % d) * 2n
  const up = twice > d || (twice === d && (mode === 'half-up' || floor % 2n === 1n))
  return up ? floor + 1n : floor
}

/** The fraction rounded to a whole number. */
export const roundFraction = (f: Fraction, mode: RoundingMode): bigint => divRound(f.n, f.d, mode)
