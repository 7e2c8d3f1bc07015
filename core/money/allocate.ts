import { bad, type Checked, good, type Problem, problem } from '../problems.ts'
import { apportion } from './apportion.ts'
import { type Minor, minor } from './minor.ts'

/**
 * `total` shared out by `weights` (whole numbers ≥ 0, not all 0) by largest remainder: the shares add up to the
 * total, a zero weight gets nothing, each share is within one minor unit of its exact value, equal remainders go to
 * the first, and −total gives the mirrored shares.
 */
export function allocate(total: Minor, weights: readonly number[], field = 'weights'): Checked<Minor[]> {
  const problems = weightProblems(weights, field)
  if (problems.length > 0) return bad(problems)
  const sum = weights.reduce((all, weight) => all + BigInt(weight), 0n)
  const exact = weights.map(weight => ({ n: BigInt(total) * BigInt(weight), d: sum }))
  return good(apportion(BigInt(total), exact).map(share => minor(Number(share))))
}

function weightProblems(weights: readonly number[], field: string): Problem[] {
  const wrong = weights.flatMap((weight, i) =>
    Number.isSafeInteger(weight) && weight >= 0 ? [] : [problem('allocate.weight', `${field}[${i}]`)],
  )
  if (wrong.length === 0 && !weights.some(weight => weight > 0)) return [problem('allocate.noWeight', field)]
  return wrong
}
