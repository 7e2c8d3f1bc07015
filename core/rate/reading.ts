import { type Instant, instantMs } from '../calendar/zone.ts'
import { type Problem, problem } from '../problems.ts'

/** One look at a clock on the shelf against a reference. */
export interface Reading {
  readonly at: Instant
  /** Seconds fast (+) or slow (−), as left on the clock. */
  readonly errorSeconds: number
  readonly wound?: boolean | undefined
  readonly handsSet?: boolean | undefined
  /**
   * Turns given to the rating nut; which way is + is the shop's own choice, and the clock's answer tells the
   * factor.
   */
  readonly nutTurns?: number | undefined
  /** The clock was found stopped and set going again. */
  readonly stopped?: boolean | undefined
}

/** Whether what was done at the reading ends one stretch of free running and begins another. */
export const opensSegment = ({ handsSet, nutTurns, stopped }: Reading): boolean =>
  Boolean(handsSet || nutTurns || stopped)

const largestError = 1e9
const mostReadings = 20_000

/**
 * Problems of a log: `date.notAnInstant`, `rate.error`, `reading.nutTurns`, `rate.outOfOrder`, `rate.sameTime`,
 * `rate.tooMany`.
 */
export function readingProblems(readings: readonly Reading[], field = 'readings'): Problem[] {
  if (readings.length > mostReadings) return [problem('rate.tooMany', field, { most: mostReadings })]
  let before: number | undefined
  return readings.flatMap((reading, i) => {
    const now = instantMs(reading.at)
    const problems = oneReading(reading, now, `${field}[${i}]`)
    if (before !== undefined && now !== undefined && now <= before)
      problems.push(problem(now === before ? 'rate.sameTime' : 'rate.outOfOrder', `${field}[${i}].at`))
    before = now
    return problems
  })
}

function oneReading(reading: Reading, ms: number | undefined, field: string): Problem[] {
  const { at, errorSeconds, nutTurns = 0 } = reading
  const problems = ms === undefined ? [problem('date.notAnInstant', `${field}.at`, { text: at })] : []
  return [
    ...problems,
    ...errorProblems(errorSeconds, `${field}.errorSeconds`),
    ...nutTurnsProblems(nutTurns, `${field}.nutTurns`),
  ]
}

/** `rate.error` unless these can be seconds that a clock is off. */
export const errorProblems = (seconds: number, field: string): Problem[] =>
  withinSize(seconds, largestError) ? [] : [problem('rate.error', field)]

/** `reading.nutTurns` unless these can be turns given to a rating nut. */
export const nutTurnsProblems = (turns: number, field: string): Problem[] =>
  isNutTurns(turns) ? [] : [problem('reading.nutTurns', field)]

/** The most turns of the nut one reading may say, either way. Our own bound: more is a slip of the finger, no screw is so long. */
const mostNutTurns = 100

/** Whether these are turns that can have been given to a rating nut. */
export const isNutTurns = (turns: number): boolean => withinSize(turns, mostNutTurns)

const withinSize = (n: number, most: number): boolean => Number.isFinite(n) && Math.abs(n) <= most
