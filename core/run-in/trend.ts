import { dayMs } from '../calendar/units.ts'
import { segmentsOf } from '../rate/rate.ts'
import type { Reading } from '../rate/reading.ts'
import { leastSquares } from '../statistics/line-fit.ts'
import { msOf } from './shelf-reading.ts'

interface RateAt {
  readonly daysSinceWind: number
  readonly ratePerDay: number
}

/**
 * How the rate changes as the spring runs down, in seconds a day per day since the wind: the least-squares slope of
 * the rate between neighbouring readings on the time since the last wind. Negative for a clock that gains early and
 * loses late. Null with fewer than three such rates, or all at one age of the wind.
 */
export function trendOverWind(readings: readonly Reading[]): number | null {
  const rates = segmentsOf(readings).flatMap(ratesSinceWind)
  const ages = rates.map(rate => rate.daysSinceWind)
  if (rates.length < 3 || ages.every(age => age === ages[0])) return null
  return leastSquares(
    ages,
    rates.map(rate => rate.ratePerDay),
  ).slope
}

function ratesSinceWind(segment: readonly Reading[]): RateAt[] {
  const rates: RateAt[] = []
  const times = segment.map(msOf)
  let woundMs: number | undefined
  segment.forEach((reading, i) => {
    const before = segment[i - 1]
    const [now = 0, then = 0] = [times[i], times[i - 1]]
    if (before && woundMs !== undefined) {
      const days = (now - then) / dayMs
      const ratePerDay = (reading.errorSeconds - before.errorSeconds) / days
      rates.push({ daysSinceWind: ((now + then) / 2 - woundMs) / dayMs, ratePerDay })
    }
    if (reading.wound) woundMs = now
  })
  return rates
}
