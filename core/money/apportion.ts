import type { Fraction } from '../decimal/fraction.ts'
import { roundFraction } from './div-round.ts'

/**
 * Whole shares that add up to `total`, each the exact share rounded up or down (largest remainder): the exact
 * shares are rounded half up, then the units still owing go to the shares rounded furthest the other way. Among
 * equals the first share ends up with more. The exact shares must add up to within half a unit per share of
 * `total`. Mirrors exactly when every sign is turned.
 */
export function apportion(total: bigint, exact: readonly Fraction[]): bigint[] {
  const shares = exact.map(share => roundFraction(share, 'half-up'))
  const owing = total - shares.reduce((sum, share) => sum + share, 0n)
  if (owing === 0n) return shares
  const step = owing > 0n ? 1n : -1n
  for (const index of furthestBehind(exact, shares, step).slice(0, Number(owing * step)))
    shares[index] = (shares[index] ?? 0n) + step
  return shares
}

/** Indexes by how far the share lies behind its exact value in the direction of `step`, furthest first. */
function furthestBehind(exact: readonly Fraction[], shares: readonly bigint[], step: bigint): number[] {
  const behind = exact.map(({ n, d }, index) => ({
    index,
    n: (n - (shares[index] ?? 0n) * d) * step,
    d,
    turn: n * step > 0n ? index : 2 * exact.length - index,
  }))
  behind.sort((a, b) => compare(b.n * a.d, a.n * b.d) || a.turn - b.turn)
  return behind.map(({ index }) => index)
}

const compare = (a: bigint, b: bigint): number => (a < b ? -1 : a > b ? 1 : 0)
