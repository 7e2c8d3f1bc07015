import { dayMs } from '../calendar/units.ts'
import type { Instant } from '../calendar/zone.ts'
import { segmentsOf } from '../rate/rate.ts'
import { leastSquares } from '../statistics/line-fit.ts'
import type { ShelfReading } from './shelf-reading.ts'

/** The room a chart is drawn in, in its own units. */
export interface ChartBox {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

export interface Point {
  readonly x: number
  readonly y: number
}

/** A stretch of free running: its readings, its fitted line, and how far the clock may drift from its first reading. */
export interface ChartSegment {
  readonly points: readonly Point[]
  /** Null with fewer than two readings. */
  readonly fit: readonly [Point, Point] | null
  /** The corners of the wedge within which the rate is within the limit; it may reach beyond the box. */
  readonly band: readonly Point[]
}

/** What was done to the clock at a reading. */
export interface ChartMark {
  readonly x: number
  readonly at: Instant
  readonly kinds: readonly ('nut' | 'hands' | 'stopped')[]
  readonly turns: number
}

/** A chart of a run's error over time: geometry only, so that a page draws it without reckoning. */
export interface RateChart {
  readonly segments: readonly ChartSegment[]
  readonly winds: readonly { readonly x: number; readonly at: Instant }[]
  readonly marks: readonly ChartMark[]
  /** Horizontal lines at round numbers of seconds. */
  readonly seconds: readonly { readonly y: number; readonly value: number }[]
  /** Days written below, few enough not to run into one another. */
  readonly days: readonly { readonly x: number; readonly at: Instant }[]
}

const leastSpanSeconds = 20
const labelWidth = 76

const msOf = (reading: ShelfReading): number => Date.parse(reading.at)

interface Scales {
  readonly x: (ms: number) => number
  readonly y: (seconds: number) => number
  readonly low: number
  readonly high: number
  readonly from: number
  readonly to: number
}

function scalesOf(log: readonly ShelfReading[], box: ChartBox): Scales {
  const [first = 0, last = 0] = [log[0], log.at(-1)].map(reading => (reading ? msOf(reading) : 0))
  const to = Math.max(last, first + dayMs)
  let [low, high] = [0, 0]
  for (const { errorSeconds } of log) {
    low = Math.min(low, errorSeconds)
    high = Math.max(high, errorSeconds)
  }
  const spare = Math.max((high - low) * 0.12, (leastSpanSeconds - (high - low)) / 2)
  low -= spare
  high += spare
  const inner = { width: box.width - box.left - box.right, height: box.height - box.top - box.bottom }
  return {
    x: ms => box.left + ((ms - first) / (to - first)) * inner.width,
    y: seconds => box.top + ((high - seconds) / (high - low)) * inner.height,
    low,
    high,
    from: first,
    to,
  }
}

function segmentOf(part: readonly ShelfReading[], { x, y }: Scales, limitPerDay: number): ChartSegment {
  const points = part.map(reading => ({ x: x(msOf(reading)), y: y(reading.errorSeconds) }))
  return { points, fit: fitOf(part, { x, y }), band: bandOf(part, { x, y }, limitPerDay) }
}

/** The ends of the least-squares line. */
function fitOf(part: readonly ShelfReading[], { x, y }: Pick<Scales, 'x' | 'y'>): [Point, Point] | null {
  if (part.length < 2) return null
  const times = part.map(msOf)
  const [first = 0, last = 0] = [times[0], times.at(-1)]
  const days = times.map(ms => (ms - first) / dayMs)
  const { slope, intercept } = leastSquares(
    days,
    part.map(reading => reading.errorSeconds),
  )
  const end = (ms: number): Point => ({ x: x(ms), y: y(intercept + ((ms - first) / dayMs) * slope) })
  return [end(first), end(last)]
}

function bandOf(part: readonly ShelfReading[], { x, y }: Pick<Scales, 'x' | 'y'>, limit: number): Point[] {
  const [first, last] = [part[0], part.at(-1)]
  if (!first || !last || first === last) return []
  const drift = ((msOf(last) - msOf(first)) / dayMs) * limit
  return [
    { x: x(msOf(first)), y: y(first.errorSeconds) },
    { x: x(msOf(last)), y: y(first.errorSeconds + drift) },
    { x: x(msOf(last)), y: y(first.errorSeconds - drift) },
  ]
}

function marksOf(log: readonly ShelfReading[], { x }: Scales): ChartMark[] {
  return log.slice(1).flatMap(reading => {
    const kinds = [
      ...(reading.stopped ? (['stopped'] as const) : []),
      ...(reading.nutTurns ? (['nut'] as const) : []),
      ...(reading.handsSet ? (['hands'] as const) : []),
    ]
    return kinds.length > 0
      ? [{ x: x(msOf(reading)), at: reading.at, kinds, turns: reading.nutTurns ?? 0 }]
      : []
  })
}

/** Round steps a person reads at a glance: seconds, then minutes, then hours. */
const steps = [1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 21_600, 43_200, 86_400]

function secondLines({ low, high, y }: Scales): { y: number; value: number }[] {
  const span = high - low
  const step = steps.find(candidate => span / candidate <= 6) ?? 10 ** Math.ceil(Math.log10(span / 6))
  const first = Math.ceil(low / step)
  const count = Math.floor(high / step) - first + 1
  return Array.from({ length: count }, (_, i) => ({ value: (first + i) * step, y: y((first + i) * step) }))
}

/** Winds where they leave room for their words, otherwise as many of them as fit, first and last kept. */
function dayLabels(log: readonly ShelfReading[], { x }: Scales, box: ChartBox): { x: number; at: Instant }[] {
  const labels: { x: number; at: Instant }[] = []
  for (const reading of [...log].reverse()) {
    const here = x(msOf(reading))
    const before = labels.at(-1)
    const first = reading === log[0]
    if (before === undefined || before.x - here >= labelWidth) labels.push({ x: here, at: reading.at })
    else if (first && labels.length > 1 && here - box.left < 1)
      labels.splice(-1, 1, { x: here, at: reading.at })
  }
  return labels.reverse()
}

/** The chart of a log that `rateOf` accepts; `limitPerDay` in seconds. */
export function rateChart(log: readonly ShelfReading[], limitPerDay: number, box: ChartBox): RateChart {
  const scales = scalesOf(log, box)
  const wound = log.filter(reading => reading.wound)
  return {
    segments: segmentsOf(log).map(part => segmentOf(part, scales, limitPerDay)),
    winds: wound.map(reading => ({ x: scales.x(msOf(reading)), at: reading.at })),
    marks: marksOf(log, scales),
    seconds: secondLines(scales),
    days: dayLabels(log, scales, box),
  }
}

/** Points as an SVG path or polygon takes them, at a tenth of a unit. */
export const pointsText = (points: readonly Point[]): string =>
  points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')
