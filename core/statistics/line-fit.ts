import { bad, type Checked, good, type Problem, problem } from '../problems.ts'
import { theilSen } from './theil-sen.ts'

/** The least-squares line y = intercept + slope · x. */
export interface Line {
  readonly slope: number
  readonly intercept: number
  /** √(Σ residual² ÷ (n − 2)); null with two points, which any line fits. */
  readonly residualSd: number | null
}

/** A line fitted both ways: least squares, and the Theil–Sen slope that single wild readings do not sway. */
export interface LineFit extends Line {
  readonly theilSen: number
}

/** Theil–Sen looks at every pair: so many points are 12 million pairs. */
export const mostPoints = 5000

/**
 * Both fits. Problems: `fit.lengths` (x and y differ), `fit.tooFew` (fewer than two points), `fit.tooMany` (more
 * than 5000), `fit.notFinite`, `fit.sameX` (every x the same).
 */
export function lineFit(x: readonly number[], y: readonly number[]): Checked<LineFit> {
  const problems = fitProblems(x, y)
  if (problems.length > 0) return bad(problems)
  return good({ ...leastSquares(x, y), theilSen: theilSen(x, y) })
}

/** The least-squares line, about the means so that no digits are lost. Needs two different x. */
export function leastSquares(x: readonly number[], y: readonly number[]): Line {
  const [meanX, meanY] = [mean(x), mean(y)]
  let [sxx, sxy] = [0, 0]
  x.forEach((xi, i) => {
    sxx += (xi - meanX) ** 2
    sxy += (xi - meanX) * ((y[i] as number) - meanY)
  })
  const slope = sxy / sxx
  const squares = x.reduce((sum, xi, i) => sum + ((y[i] as number) - meanY - slope * (xi - meanX)) ** 2, 0)
  return {
    slope,
    intercept: meanY - slope * meanX,
    residualSd: x.length > 2 ? Math.sqrt(squares / (x.length - 2)) : null,
  }
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

function fitProblems(x: readonly number[], y: readonly number[]): Problem[] {
  const problems = [...notFinite(x, 'x'), ...notFinite(y, 'y')]
  if (x.length !== y.length) problems.push(problem('fit.lengths', 'y', { x: x.length, y: y.length }))
  if (x.length < 2) problems.push(problem('fit.tooFew', 'x'))
  else if (x.length > mostPoints) problems.push(problem('fit.tooMany', 'x', { most: mostPoints }))
  else if (x.every(xi => xi === x[0])) problems.push(problem('fit.sameX', 'x'))
  return problems
}

const notFinite = (values: readonly number[], field: string): Problem[] =>
  values.flatMap((value, i) => (Number.isFinite(value) ? [] : [problem('fit.notFinite', `${field}[${i}]`)]))
