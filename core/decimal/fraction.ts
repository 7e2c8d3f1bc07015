/** An exact rational number n ÷ d with d > 0. */
export interface Fraction {
  readonly n: bigint
  readonly d: bigint
}

/** The sum of all, exact. Like denominators, the usual case in one document, stay as they are. */
export function sumFractions(all: readonly Fraction[]): Fraction {
  const byDenominator = new Map<bigint, bigint>()
  for (const { n, d } of all) byDenominator.set(d, (byDenominator.get(d) ?? 0n) + n)
  return balancedSum(Array.from(byDenominator, ([d, n]) => ({ n, d })))
}

/** Halves are added to halves, so that numbers of like length meet however many denominators there are. */
function balancedSum(all: readonly Fraction[]): Fraction {
  const [first, second] = all
  if (!first) return { n: 0n, d: 1n }
  if (!second) return first
  const [a, b] = [balancedSum(all.slice(0, all.length / 2)), balancedSum(all.slice(all.length / 2))]
  return { n: a.n * b.d + b.n * a.d, d: a.d * b.d }
}
