import { dayMs } from '../calendar/units.ts'
import { ranDown } from './faults.ts'
import { windEveryDays } from './movement.ts'
import type { ShelfClock } from './shelf-clock.ts'
import { msOf, type ShelfReading } from './shelf-reading.ts'

/** How closely a clock is watched. */
export interface Watch {
  readonly readingEveryDays: number
  /** Whole days between two instants on which nobody could read, as the shop was closed; none where it is left out. */
  readonly closedDays?: ((fromMs: number, toMs: number) => number) | undefined
}

/** Readings lie near enough up to so many times the policy's interval (our own choice: one day missed is none). */
const nearEnough = 1.5
/** A wind brought forward to an open day still counts as whole from two thirds of its interval on (our own choice). */
const leastOfAWind = 2 / 3

/** What of a test was under observation. */
export interface Observed {
  readonly days: number
  /** Days between readings too far apart: what the clock did then is not known. */
  readonly unobservedDays: number
  /** Winding intervals watched from a wind to the next one due. */
  readonly winds: number
}

/** The most days that may lie between two readings. */
const mostDays = (fromMs: number, toMs: number, { readingEveryDays, closedDays }: Watch): number =>
  nearEnough * readingEveryDays + (closedDays?.(fromMs, toMs) ?? 0)

/** Whether what the clock did between two instants is known. */
export const isWatched = (fromMs: number, toMs: number, watch: Watch): boolean =>
  toMs - fromMs <= mostDays(fromMs, toMs, watch) * dayMs

/** What was observed from the first of these readings to the last. Time run down, and time longer than a day past the duration, shows nothing. */
export function observed(readings: readonly ShelfReading[], clock: ShelfClock, watch: Watch): Observed {
  let [knownMs, unknownMs, winds] = [0, 0, 0]
  let wind = readings[0] ? { atMs: msOf(readings[0]), whole: true, counted: false } : undefined
  const wholeMs = windEveryDays(clock.durationDays) * dayMs
  readings.slice(1).forEach((reading, i) => {
    const before = readings[i]
    if (!before || !wind) return
    const [fromMs, toMs] = [msOf(before), msOf(reading)]
    const [near, seenMs] = [isWatched(fromMs, toMs, watch), seenUntil(reading, wind.atMs, clock) - fromMs]
    if (near) knownMs += Math.max(0, seenMs)
    else unknownMs += toMs - fromMs
    wind.whole &&= near && seenMs >= toMs - fromMs
    const ranMs = toMs - wind.atMs
    if (wind.whole && !wind.counted && ranMs >= (reading.wound ? wholeMs * leastOfAWind : wholeMs)) {
      winds += 1
      wind.counted = true
    }
    if (reading.wound) wind = { atMs: toMs, whole: true, counted: false }
  })
  return { days: knownMs / dayMs, unobservedDays: unknownMs / dayMs, winds }
}

/** Until when a reading shows the clock going: itself, or when it ran down; never longer than a day past what it is made to run. */
function seenUntil(reading: ShelfReading, woundMs: number, clock: ShelfClock): number {
  if (!clock.isWound) return msOf(reading)
  const runsUntilMs = woundMs + clock.durationDays * dayMs
  return Math.min(msOf(reading), ranDown(reading, woundMs, clock) ? runsUntilMs : runsUntilMs + dayMs)
}
