import { type Problem, problem } from '../problems.ts'

/** A bound a figure has to keep: `least` ≤ value ≤ `most`. */
export interface Bounds {
  readonly least: number
  readonly most: number
}

/** `number.outOfRange` unless the figure is finite and within its bounds. */
export const figureProblems = (value: number, field: string, { least, most }: Bounds): Problem[] =>
  Number.isFinite(value) && value >= least && value <= most
    ? []
    : [problem('number.outOfRange', field, { least, most })]

/** As `figureProblems`, and `number.notWhole` for a fraction. */
export const countProblems = (value: number, field: string, bounds: Bounds): Problem[] =>
  Number.isFinite(value) && !Number.isInteger(value)
    ? [problem('number.notWhole', field)]
    : figureProblems(value, field, bounds)
