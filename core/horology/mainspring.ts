import { bad, type Checked, good, problem } from '../problems.ts'
import { figureProblems } from './figures.ts'

/** Inside diameter of the barrel, diameter of its arbor and thickness of the spring, all in millimetres. */
export interface MainspringInput {
  readonly barrelMm: number
  readonly arborMm: number
  readonly thicknessMm: number
}

/**
 * What fits by theory. Springs in use run from 80 % to 120 % of it: a figure to compare with, never a reason to
 * refuse one.
 */
export interface Mainspring {
  readonly lengthMm: number
  /** Turns of the arbor from run down to fully wound. */
  readonly turns: number
}

const size = { least: 0.001, most: 10_000 }

/**
 * Half-area rule (common practice): the spring fills half the room between wall and arbor, L = π (D² − d²) ÷ (8 t);
 * turns = (2R − D − d) ÷ (2t) with R = √((D² + d²) ÷ 2). Problems: figures out of 0.001 to 10000,
 * `mainspring.arbor` (not smaller than the barrel), `mainspring.thickness` (no coil would fit).
 */
export function mainspring({
  barrelMm: D,
  arborMm: d,
  thicknessMm: t,
}: MainspringInput): Checked<Mainspring> {
  const problems = [
    ...figureProblems(D, 'barrelMm', size),
    ...figureProblems(d, 'arborMm', size),
    ...figureProblems(t, 'thicknessMm', size),
  ]
  if (problems.length === 0 && d >= D) problems.push(problem('mainspring.arbor', 'arborMm'))
  if (problems.length === 0 && t >= (D - d) / 4) problems.push(problem('mainspring.thickness', 'thicknessMm'))
  if (problems.length > 0) return bad(problems)
  const R = Math.sqrt((D * D + d * d) / 2)
  return good({ lengthMm: (Math.PI * (D * D - d * d)) / (8 * t), turns: (2 * R - D - d) / (2 * t) })
}

/**
 * Width of the ring a run-down spring makes at the wall, in millimetres, by the half-area rule: (D − √((D² + d²) ÷
 * 2)) ÷ 2.
 */
export const runDownRingMm = (barrelMm: number, arborMm: number): number =>
  (barrelMm - Math.sqrt((barrelMm ** 2 + arborMm ** 2) / 2)) / 2
