import { minuteOf } from '../calendar/local.ts'
import { hourMs } from '../calendar/units.ts'
import { blowsAt, type StrikePattern } from '../strike/blows.ts'
import type { Assessment } from './assess.ts'

/** A figure at so many places after the point; null stays null. */
const at = (places: number, value: number | null): number | null =>
  value === null ? null : Math.round(value * 10 ** places) / 10 ** places

/** A second misheard is four a day where a rate is told from a quarter of a day; from less it says nothing. This program's own rule. */
const leastMsOfRate = 6 * hourMs

/** The figures of a run as they are shown: seconds to a tenth, turns to a hundredth, days to a tenth. Null where not known, or not yet. */
export function shownFigures({ rate, trendOverWind, verdict }: Assessment) {
  const { ratePerDay, limitPerDay, suggestedTurns, ranDays, neededDays } = verdict.values
  const last = rate.segments.at(-1)
  const tellsRate = last !== undefined && Date.parse(last.to) - Date.parse(last.from) >= leastMsOfRate
  return {
    ratePerDay: tellsRate ? at(1, ratePerDay) : null,
    limitPerDay: at(1, limitPerDay),
    netPerWind: at(1, rate.netPerWind.at(-1) ?? null),
    secondsPerDayPerTurn: at(1, rate.secondsPerDayPerTurn),
    suggestedTurns: tellsRate ? at(2, suggestedTurns) : null,
    trendOverWind: tellsRate ? at(2, trendOverWind) : null,
    scatter: at(1, last?.residualSd ?? null),
    ranDays: at(1, ranDays),
    neededDays: at(1, neededDays),
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

/** The blows due at a time on the dial, `HH:MM`; null where it is none, or where they are not known. */
export const blowsDue = (pattern: StrikePattern | null, dial: string): number | null => {
  const minute = minuteOf(dial)
  if (minute === undefined || pattern === null) return null
  return pattern === 'hours' && minute % 60 !== 0 ? null : blowsAt(pattern, minute)
}
