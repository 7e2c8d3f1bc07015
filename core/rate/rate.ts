import { dayMs } from '../calendar/units.ts'
import type { Instant } from '../calendar/zone.ts'
import { bad, type Checked, good, type Problem, problem } from '../problems.ts'
import { leastSquares, mostPoints } from '../statistics/line-fit.ts'
import { type RobustLine, robustLine } from './line.ts'
import { nutResponse, turnsToZero } from './nut.ts'
import { opensSegment, type Reading, readingProblems } from './reading.ts'

export type { Reading } from './reading.ts'

/**
 * One stretch of free running between interventions. Rates in seconds a day, + gaining; null with fewer than two
 * readings.
 */
export interface Segment {
  readonly from: Instant
  readonly to: Instant
  readonly readings: number
  /** Least-squares slope. */
  readonly ratePerDay: number | null
  /** Theil–Sen slope. */
  readonly robustRatePerDay: number | null
  /** Scatter about the least-squares line in seconds; null with fewer than three readings. */
  readonly residualSd: number | null
}

/** What a log says of the clock's going. */
export interface Rate {
  readonly segments: readonly Segment[]
  /** Seconds gained (+) or lost (−) from each wind to the next within a segment. */
  readonly netPerWind: readonly number[]
  /** What one turn of the nut does, learned from this clock's own log; null when it has not been seen. */
  readonly secondsPerDayPerTurn: number | null
  /** Turns that would bring the last segment's rate to zero; null where rate or answer do not exceed their uncertainty. */
  readonly suggestedTurns: number | null
}

/**
 * The rate of a log of readings in order of time. A reading with hands set, nut turned or clock stopped closes the
 * segment before it and opens the next. Problems: those of `readingProblems`, `rate.segmentTooLong` (more than 5000
 * readings without an intervention).
 */
export function rateOf(readings: readonly Reading[]): Checked<Rate> {
  const problems = readingProblems(readings)
  if (problems.length > 0) return bad(problems)
  const parts = segmentsOf(readings)
  const tooLong = lengthProblems(parts)
  if (tooLong.length > 0) return bad(tooLong)
  const lines = parts.map(lineOf)
  const response = nutResponse(
    parts.map((part, i) => ({ turns: part[0]?.nutTurns ?? 0, line: lines[i] ?? null })),
  )
  return good({
    segments: parts.map((part, i) => segmentRate(part, lines[i] ?? null)),
    netPerWind: parts.flatMap(netPerWind),
    secondsPerDayPerTurn: response?.perTurn ?? null,
    suggestedTurns: turnsToZero(lines.at(-1) ?? null, response),
  })
}

/** The log cut before every reading that opens a segment. */
export function segmentsOf(readings: readonly Reading[]): (readonly Reading[])[] {
  const segments: Reading[][] = []
  for (const reading of readings) {
    const open = segments.at(-1)
    if (open && !opensSegment(reading)) open.push(reading)
    else segments.push([reading])
  }
  return segments
}

const lengthProblems = (parts: readonly (readonly Reading[])[]): Problem[] =>
  parts.some(part => part.length > mostPoints)
    ? [problem('rate.segmentTooLong', 'readings', { most: mostPoints })]
    : []

/** Days since the first reading, and errors. */
function pointsOf(readings: readonly Reading[]) {
  const times = readings.map(({ at }) => Date.parse(at))
  return {
    days: times.map(time => (time - (times[0] ?? 0)) / dayMs),
    errors: readings.map(reading => reading.errorSeconds),
  }
}

function lineOf(readings: readonly Reading[]): RobustLine | null {
  const { days, errors } = pointsOf(readings)
  return readings.length < 2 ? null : robustLine(days, errors)
}

/** The rates of one segment. */
function segmentRate(readings: readonly Reading[], robust: RobustLine | null): Segment {
  const { days, errors } = pointsOf(readings)
  const line = readings.length < 2 ? null : leastSquares(days, errors)
  return {
    from: readings[0]?.at ?? '',
    to: readings.at(-1)?.at ?? '',
    readings: readings.length,
    ratePerDay: line?.slope ?? null,
    robustRatePerDay: robust?.slope ?? null,
    residualSd: line?.residualSd ?? null,
  }
}

function netPerWind(readings: readonly Reading[]): number[] {
  const wound = readings.filter(reading => reading.wound)
  return wound.slice(1).map((reading, i) => reading.errorSeconds - (wound[i]?.errorSeconds ?? 0))
}
