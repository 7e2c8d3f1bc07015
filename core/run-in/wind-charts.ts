import { dayMs } from '../calendar/units.ts'
import { type ChartBox, type Point, roundStep } from './rate-chart.ts'
import { ratesBetween } from './rates-between.ts'
import { leftOn, msOf, type ShelfReading } from './shelf-reading.ts'

/** One wind, drawn from where the hands stood when it was wound. */
export interface WindLine {
  readonly at: string
  readonly points: readonly Point[]
}

/** Winds laid over one another: a spring gains early and loses late in each, a clock that wanders differs from wind to wind. Geometry only. */
export interface WindsOver {
  readonly winds: readonly WindLine[]
  readonly seconds: readonly { readonly y: number; readonly value: number }[]
  /** Days since the wind, at each whole day that leaves room. */
  readonly days: readonly { readonly x: number; readonly value: number }[]
}

interface Gained {
  readonly at: string
  readonly points: { readonly days: number; readonly seconds: number }[]
}

/** What was gained since each wind, hands set in between left out. */
function gainedByWind(log: readonly ShelfReading[]): Gained[] {
  const winds: Gained[] = []
  let left: number | undefined
  let [woundMs, gained] = [0, 0]
  for (const reading of log) {
    const ms = msOf(reading)
    if (left !== undefined && reading.errorSeconds !== undefined && !reading.stopped) {
      gained += reading.errorSeconds - left
      winds.at(-1)?.points.push({ days: (ms - woundMs) / dayMs, seconds: gained })
    }
    left = leftOn(reading) ?? (reading.stopped ? undefined : left)
    if (!reading.wound) continue
    ;[woundMs, gained] = [ms, 0]
    winds.push({ at: reading.at, points: [{ days: 0, seconds: 0 }] })
  }
  return winds.filter(({ points }) => points.length > 1)
}

/** The winds of a log over one another; null with fewer than two. */
export function windsOver(log: readonly ShelfReading[], box: ChartBox): WindsOver | null {
  const winds = gainedByWind(log)
  if (winds.length < 2) return null
  const all = winds.flatMap(({ points }) => points)
  const most = Math.max(...all.map(({ days }) => days))
  const { low, high } = spanOf(all.map(({ seconds }) => seconds))
  const x = (days: number) => box.left + (days / most) * (box.width - box.left - box.right)
  const y = yOf(low, high, box)
  return {
    winds: winds.map(({ at, points }) => ({
      at,
      points: points.map(({ days, seconds }) => ({ x: x(days), y: y(seconds) })),
    })),
    seconds: linesBetween(low, high).map(value => ({ y: y(value), value })),
    days: dayMarks(most).map(value => ({ x: x(value), value })),
  }
}

/** A day's rate as a bar from zero. */
export interface RateBar {
  readonly at: string
  readonly perDay: number
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** The rate from each reading to the next as bars, and the limit as two lines. Geometry only. */
export interface RateBars {
  readonly bars: readonly RateBar[]
  readonly seconds: readonly { readonly y: number; readonly value: number }[]
  readonly limits: readonly number[]
}

const gapShare = 0.25

/** The rates of a log; null with fewer than three. `limitPerDay` in seconds. */
export function rateBars(log: readonly ShelfReading[], limitPerDay: number, box: ChartBox): RateBars | null {
  const rates = ratesBetween(log).flatMap((perDay, i) => {
    const at = log[i]?.at
    return perDay === null || at === undefined ? [] : [{ at, perDay }]
  })
  if (rates.length < 3) return null
  const { low, high } = spanOf([...rates.map(({ perDay }) => perDay), limitPerDay, -limitPerDay])
  const y = yOf(low, high, box)
  const room = (box.width - box.left - box.right) / rates.length
  return {
    bars: rates.map(({ at, perDay }, i) => ({
      at,
      perDay,
      x: box.left + (i + gapShare / 2) * room,
      width: room * (1 - gapShare),
      y: Math.min(y(0), y(perDay)),
      height: Math.abs(y(perDay) - y(0)),
    })),
    seconds: linesBetween(low, high).map(value => ({ y: y(value), value })),
    limits: [y(limitPerDay), y(-limitPerDay)],
  }
}

const leastSpan = 4

function spanOf(values: readonly number[]): { low: number; high: number } {
  const [low, high] = [Math.min(0, ...values), Math.max(0, ...values)]
  const spare = Math.max((high - low) * 0.1, (leastSpan - (high - low)) / 2)
  return { low: low - spare, high: high + spare }
}

const yOf =
  (low: number, high: number, { top, bottom, height }: ChartBox) =>
  (seconds: number) =>
    top + ((high - seconds) / (high - low)) * (height - top - bottom)

function linesBetween(low: number, high: number): number[] {
  const step = roundStep(high - low)
  const first = Math.ceil(low / step)
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, i) => (first + i) * step)
}

const mostDayMarks = 8

function dayMarks(most: number): number[] {
  const step = Math.max(1, Math.ceil(most / mostDayMarks))
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step)
}
