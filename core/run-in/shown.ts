import type { StrikePattern } from '../strike/blows.ts'
import { blowsAt } from '../strike/blows.ts'
import type { ShelfReading } from './shelf-reading.ts'
import { trendOverWind } from './trend.ts'
import type { Verdict } from './verdict.ts'

/** A figure at so many places after the point; null stays null. */
const at = (places: number, value: number | null): number | null =>
  value === null ? null : Math.round(value * 10 ** places) / 10 ** places

/** The figures of a run as they are shown: seconds to a tenth, turns to a hundredth, days to a tenth. Null where not known, or not yet. */
export function shownFigures(verdict: Verdict, readings: readonly ShelfReading[]) {
  const { ratePerDay, plusMinus, scatterSeconds, secondsPerDayPerTurn, suggest, observedDays } = verdict
  return {
    ratePerDay: at(1, ratePerDay),
    plusMinus: at(1, plusMinus),
    scatter: at(1, scatterSeconds),
    secondsPerDayPerTurn: at(1, secondsPerDayPerTurn),
    suggestedTurns: at(2, suggest && Math.abs(suggest.turns)),
    trendOverWind: at(2, trendOverWind(readings)),
    observedDays: at(1, observedDays),
    neededDays: at(1, verdict.neededDays),
  }
}

/** Figures rounded to a tenth, for a sentence; what is no figure stays as it is. */
export const roundedValues = (
  values: Readonly<Record<string, string | number | null>>,
): Record<string, string | number | null> =>
  Object.fromEntries(
    Object.entries(values).map(([key, value]) => [key, typeof value === 'number' ? at(1, value) : value]),
  )

/** Blows in a whole day where they follow from what is on record; a plain hour strike may sound half hours too and is left open. */
export const blowsPerDay = (pattern: StrikePattern | null): number | null =>
  pattern === null || pattern === 'hours'
    ? null
    : Array.from({ length: 96 }, (_, quarter) => blowsAt(pattern, quarter * 15)).reduce(
        (sum, n) => sum + n,
        0,
      )
