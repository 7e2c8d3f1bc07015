import { dayMs } from '../calendar/units.ts'
import { leastSquares } from '../statistics/line-fit.ts'
import { studentT } from '../statistics/student-t.ts'
import { windEveryDays } from './movement.ts'
import type { ShelfClock } from './shelf-clock.ts'
import { msOf, type ShelfReading } from './shelf-reading.ts'
import type { Stretch } from './stretches.ts'
import { windRates } from './wind-curve.ts'

/** A curve is told from so many readings of a stretch on. */
const fewestPoints = 5
/** What of it is beyond so many times its 95 % uncertainty counts (our own choice). */
const sure = 1.5

/**
 * By how much the rate of a clock walks over the days of its test, in seconds a day, one way all the time; 0 where that is not told. Of a spring clock the rates
 * of whole winds are compared, for within a wind its rate changes; of others the curve common to all stretches, each about a line of its own,
 * so that casing may change the rate.
 */
export function walkOver(
  days: number,
  readings: readonly ShelfReading[],
  stretches: readonly Stretch[],
  clock: ShelfClock,
): number {
  return clock.sprung && windEveryDays(clock.durationDays) <= days
    ? walkOfWinds(withoutSlips(readings, stretches)) * days
    : walkOfStretches(stretches) * days
}

/** The readings as if the slips among them had not been read. */
function withoutSlips(readings: readonly ShelfReading[], stretches: readonly Stretch[]): ShelfReading[] {
  const slips = new Set(stretches.flatMap(({ points, line }) => (line?.slips ?? []).map(i => points[i]?.ms)))
  return readings.map(reading =>
    slips.has(msOf(reading)) ? { ...reading, errorSeconds: undefined } : reading,
  )
}

/** Seconds a day per day between whole winds; 0 with fewer than two. */
function walkOfWinds(readings: readonly ShelfReading[]): number {
  const winds = windRates(readings)
  if (winds.length < 2) return 0
  return leastSquares(
    winds.map(({ midDays }) => midDays),
    winds.map(({ ratePerDay }) => ratePerDay),
  ).slope
}

/** Twice the coefficient of t² in stretches that have each an offset and a slope of their own, where it is told beyond doubt. */
function walkOfStretches(stretches: readonly Stretch[]): number {
  let [products, squares, rest, freedom] = [0, 0, 0, -1]
  for (const { points, line } of stretches) {
    if (!line || points.length < fewestPoints) continue
    const kept = points.filter((_, i) => !line.slips.includes(i))
    const days = kept.map(({ ms }) => (ms - (kept[0]?.ms ?? 0)) / dayMs)
    const bent = offLine(
      days,
      days.map(day => day ** 2),
    )
    const off = offLine(
      days,
      kept.map(({ seconds }) => seconds),
    )
    bent.forEach((value, i) => {
      products += value * (off[i] ?? 0)
      squares += value * value
      rest += (off[i] ?? 0) ** 2
    })
    freedom += kept.length - 2
  }
  if (squares === 0 || freedom < 2) return 0
  const bend = products / squares
  const error = Math.sqrt(Math.max(0, rest - bend * products) / freedom / squares)
  const told = Math.max(0, Math.abs(bend) - sure * studentT(freedom) * error)
  return 2 * Math.sign(bend) * told
}

function offLine(x: readonly number[], y: readonly number[]): number[] {
  const { slope, intercept } = leastSquares(x, y)
  return y.map((value, i) => value - intercept - slope * (x[i] ?? 0))
}
