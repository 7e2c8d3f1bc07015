import type { RobustLine } from './line.ts'

/** A stretch of free running and the turns given to the nut at its beginning, 0 for none. */
export interface Turned {
  readonly turns: number
  readonly line: Pick<RobustLine, 'slope' | 'plusMinus'> | null
}

/** What one turn of the nut does, in seconds a day, with its 95 % uncertainty. */
export interface NutResponse {
  readonly perTurn: number
  readonly plusMinus: number
}

/**
 * The clock's own answer to its nut: least squares through zero of the change of rate on the turns given, Σ turns·change ÷ Σ turns², each change as uncertain
 * as the two rates together. Null where no turn has a rate on both its sides.
 */
export function nutResponse(stretches: readonly Turned[]): NutResponse | null {
  let [products, squares, variance] = [0, 0, 0]
  stretches.forEach(({ turns, line: after }, i) => {
    const before = stretches[i - 1]?.line
    if (turns === 0 || !before || !after) return
    products += turns * (after.slope - before.slope)
    squares += turns ** 2
    variance += turns ** 2 * (before.plusMinus ** 2 + after.plusMinus ** 2)
  })
  return squares === 0 ? null : { perTurn: products / squares, plusMinus: Math.sqrt(variance) / squares }
}

/** Turns that bring a rate to zero; null where the rate or the answer to the nut does not exceed its uncertainty: turn and read on instead. */
export function turnsToZero(line: Turned['line'], response: NutResponse | null): number | null {
  if (!line || !response) return null
  const told = Math.abs(line.slope) > line.plusMinus && Math.abs(response.perTurn) > response.plusMinus
  return told ? 0 - line.slope / response.perTurn : null
}
