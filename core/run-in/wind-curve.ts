import { dayMs } from '../calendar/units.ts'
import { windEveryDays } from './movement.ts'
import type { ShelfClock } from './shelf-clock.ts'
import { leftOn, msOf, type ShelfReading } from './shelf-reading.ts'
import type { HandsAt, Stretch } from './stretches.ts'

/** A spring's curve may bow the line of a wind by so many times the limit of steadiness; more is unsteadiness (our own choice). */
const mostBow = 3
/** A wind shorter than so many days has no curve that daily readings could show. */
const leastDays = 3

/**
 * What a spring clock gains early in each wind and loses late: the part of the readings that a parabola over each wind tells, the same in every wind.
 * `bow` is its height in the middle of a wind, in seconds; 0 for clocks without such a curve.
 */
export interface WindCurve {
  readonly bow: number
  /** The curve at an instant, in seconds. */
  readonly at: (ms: number) => number
}

const none: WindCurve = { bow: 0, at: () => 0 }

/** The curve of a log's winds by least squares on what is left of its stretches' lines, at most `mostBow` times `steady`. */
export function windCurve(
  readings: readonly ShelfReading[],
  stretches: readonly Stretch[],
  clock: ShelfClock,
  steady: number,
): WindCurve {
  const everyDays = windEveryDays(clock.durationDays)
  const winds = readings.filter(({ wound }) => wound).map(msOf)
  if (!clock.sprung || everyDays < leastDays || winds.length === 0) return none
  const unit = (ms: number): number => {
    const woundMs = winds.findLast(wind => wind <= ms) ?? winds[0] ?? ms
    const age = Math.min(Math.max((ms - woundMs) / dayMs / everyDays, 0), 1)
    return 4 * age * (1 - age)
  }
  let [products, squares] = [0, 0]
  for (const { points, line } of stretches) {
    if (!line) continue
    const kept = points.filter((_, i) => !line.slips.includes(i))
    const shape = withoutLine(kept.map(({ ms }) => ({ ms, seconds: unit(ms) })))
    const rest = withoutLine(kept)
    shape.forEach((value, i) => {
      products += value * (rest[i] ?? 0)
      squares += value * value
    })
  }
  if (squares < 1e-9) return none
  const bow = Math.max(-mostBow * steady, Math.min(mostBow * steady, products / squares))
  return { bow, at: ms => bow * unit(ms) }
}

/** What is left of points when their least-squares line is taken off. */
function withoutLine(points: readonly HandsAt[]): number[] {
  const first = points[0]?.ms ?? 0
  const days = points.map(({ ms }) => (ms - first) / dayMs)
  const [meanX, meanY] = [mean(days), mean(points.map(({ seconds }) => seconds))]
  const sxx = days.reduce((sum, day) => sum + (day - meanX) ** 2, 0)
  const sxy = points.reduce((sum, { seconds }, i) => sum + ((days[i] ?? 0) - meanX) * (seconds - meanY), 0)
  const slope = sxx === 0 ? 0 : sxy / sxx
  return points.map(({ seconds }, i) => seconds - meanY - slope * ((days[i] ?? 0) - meanX))
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length)

/** A wind from its beginning to the next, with what it gained, hands set in between left out. */
interface WholeWind {
  readonly midDays: number
  readonly ratePerDay: number
}

/** The rate of each whole wind, as long as neither nut nor adjustment changed it since: a turn begins the count anew. */
export function windRates(readings: readonly ShelfReading[]): WholeWind[] {
  let rates: WholeWind[] = []
  let wind: { ms: number; gained: number } | undefined
  let left: number | undefined
  for (const reading of readings) {
    const ms = msOf(reading)
    if (wind && left !== undefined && reading.errorSeconds !== undefined && !reading.stopped)
      wind = { ...wind, gained: wind.gained + reading.errorSeconds - left }
    left = leftOn(reading) ?? left
    if (reading.wound && wind && ms > wind.ms && left !== undefined)
      rates.push({
        midDays: (ms + wind.ms) / 2 / dayMs,
        ratePerDay: (wind.gained * dayMs) / (ms - wind.ms),
      })
    if (reading.wound) wind = { ms, gained: 0 }
    if (reading.nutTurns || reading.event === 'adjusted' || reading.stopped) {
      rates = []
      wind = undefined
    }
  }
  return rates
}
