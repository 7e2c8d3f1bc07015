import { dayMs } from '../calendar/units.ts'
import type { Instant } from '../calendar/zone.ts'
import { msOf, type ShelfEvent, type ShelfReading } from './shelf-reading.ts'
import { type Stretch, stretchesOf } from './stretches.ts'

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
  readonly kinds: readonly ('nut' | 'hands' | 'stopped' | ShelfEvent)[]
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

interface Scales {
  readonly x: (ms: number) => number
  readonly y: (seconds: number) => number
  readonly low: number
  readonly high: number
  readonly from: number
  readonly to: number
}

function scalesOf(log: readonly ShelfReading[], stretches: readonly Stretch[], box: ChartBox): Scales {
  const [first = 0, last = 0] = [log[0], log.at(-1)].map(reading => (reading ? msOf(reading) : 0))
  const to = Math.max(last, first + dayMs)
  let [low, high] = [0, 0]
  for (const { points } of stretches)
    for (const { seconds } of points) {
      low = Math.min(low, seconds)
      high = Math.max(high, seconds)
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

function segmentOf({ points, line }: Stretch, { x, y }: Scales, limitPerDay: number): ChartSegment {
  const at = (ms: number, seconds: number): Point => ({ x: x(ms), y: y(seconds) })
  const [first, last] = [points[0], points.at(-1)]
  if (!first || !last || first === last)
    return { points: points.map(p => at(p.ms, p.seconds)), fit: null, band: [] }
  const days = (last.ms - first.ms) / dayMs
  const drift = days * limitPerDay
  return {
    points: points.map(p => at(p.ms, p.seconds)),
    fit: line && [at(first.ms, line.intercept), at(last.ms, line.intercept + line.slope * days)],
    band: [
      at(first.ms, first.seconds),
      at(last.ms, first.seconds + drift),
      at(last.ms, first.seconds - drift),
    ],
  }
}

function marksOf(log: readonly ShelfReading[], { x }: Scales): ChartMark[] {
  return log.slice(1).flatMap(reading => {
    const kinds = [
      ...(reading.stopped ? (['stopped'] as const) : []),
      ...(reading.nutTurns ? (['nut'] as const) : []),
      ...(reading.leftSeconds === undefined ? [] : (['hands'] as const)),
      ...(reading.event ? [reading.event] : []),
    ]
    return kinds.length > 0
      ? [{ x: x(msOf(reading)), at: reading.at, kinds, turns: reading.nutTurns ?? 0 }]
      : []
  })
}

/** Round steps a person reads at a glance: seconds, then minutes, then hours. */
const steps = [1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 21_600, 43_200, 86_400]

/** The round step that parts a span of seconds into at most six. */
export const roundStep = (span: number): number =>
  steps.find(candidate => span / candidate <= 6) ?? 10 ** Math.ceil(Math.log10(span / 6))

function secondLines({ low, high, y }: Scales): { y: number; value: number }[] {
  const step = roundStep(high - low)
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

/** The chart of a log in order of time; `limitPerDay` in seconds. */
export function rateChart(log: readonly ShelfReading[], limitPerDay: number, box: ChartBox): RateChart {
  const stretches = stretchesOf(log)
  const scales = scalesOf(log, stretches, box)
  const wound = log.filter(reading => reading.wound)
  return {
    segments: stretches.map(stretch => segmentOf(stretch, scales, limitPerDay)),
    winds: wound.map(reading => ({ x: scales.x(msOf(reading)), at: reading.at })),
    marks: marksOf(log, scales),
    seconds: secondLines(scales),
    days: dayLabels(log, scales, box),
  }
}

/** Points as an SVG path or polygon takes them, at a tenth of a unit. */
export const pointsText = (points: readonly Point[]): string =>
  points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')
