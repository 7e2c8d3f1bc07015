import { dayMs } from '../calendar/units.ts'
import { leastSquares } from '../statistics/line-fit.ts'
import { msOf, type ShelfReading } from './shelf-reading.ts'
import { stretchesOf } from './stretches.ts'

interface RateAt {
  readonly daysSinceWind: number
  readonly ratePerDay: number
}

/**
 * How the rate changes as the spring runs down, in seconds a day per day since the wind: the least-squares slope of
 * the rate between neighbouring readings on the time since the last wind. Negative for a clock that gains early and
 * loses late. Null with fewer than three such rates, or all at one age of the wind.
 */
export function trendOverWind(readings: readonly ShelfReading[]): number | null {
  const rates = ratesSinceWind(readings)
  const ages = rates.map(rate => rate.daysSinceWind)
  if (rates.length < 3 || ages.every(age => age === ages[0])) return null
  return leastSquares(
    ages,
    rates.map(rate => rate.ratePerDay),
  ).slope
}

/** The rate between neighbouring points of a stretch, each with the age of its wind in the middle between them. */
function ratesSinceWind(readings: readonly ShelfReading[]): RateAt[] {
  const winds = readings.filter(({ wound }) => wound).map(msOf)
  return stretchesOf(readings).flatMap(({ points }) =>
    points.flatMap(({ ms, seconds }, i) => {
      const before = points[i - 1]
      const woundMs = before && winds.findLast(wind => wind <= before.ms)
      if (!before || woundMs === undefined || ms === before.ms) return []
      const ratePerDay = ((seconds - before.seconds) * dayMs) / (ms - before.ms)
      return [{ daysSinceWind: ((ms + before.ms) / 2 - woundMs) / dayMs, ratePerDay }]
    }),
  )
}
