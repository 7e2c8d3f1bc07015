import { dayMs } from '../calendar/units.ts'
import type { Instant } from '../calendar/zone.ts'
import type { ShelfClock } from './shelf-clock.ts'
import { msOf, type ShelfReading } from './shelf-reading.ts'
import { isOnTheWheel, wrongCount } from './strike-heard.ts'

/** A fault that starts the test again: a stop within the duration, or a strike or chime that was wrong too often. */
export type Fault =
  | { readonly kind: 'stopped' | 'strikeWrong' | 'chimeWrong'; readonly at: Instant }
  | {
      readonly kind: 'outOfStep' | 'miscounted'
      readonly at: Instant
      readonly expected: number
      readonly heard: number
    }

/** A clock that strikes or chimes wrong so often has a fault; once may have been misheard (our own choice, a rack cannot go out of step by itself). */
export const wrongsOfAFault = 3
/** A count wheel is set right the first time it is out of step; the second time is a fault (common practice). */
const timesOutOfStep = 2

/** The test as it stands: since which reading it counts, the faults of the whole log, and what was heard wrong without being one. */
export interface Trial {
  /** Index of the reading the running test began with: the first, or the last with a fault. */
  readonly begins: number
  readonly faults: readonly Fault[]
  /** What was wrong in the running test and starts nothing again yet. */
  readonly wrongs: readonly Fault[]
}

interface Tally {
  strikes: number
  chimes: number
  timesOut: number
  isOut: boolean
}

const nothing = (): Tally => ({ strikes: 0, chimes: 0, timesOut: 0, isOut: false })

/** Whether a stopped clock has merely run down: longer since the last wind than it is made to run. */
export const ranDown = ({ at, stopped }: ShelfReading, woundMs: number, clock: ShelfClock): boolean =>
  Boolean(stopped) && clock.isWound && Date.parse(at) - woundMs >= clock.durationDays * dayMs

/** Reads the log through. */
export function trialOf(readings: readonly ShelfReading[], clock: ShelfClock): Trial {
  const faults: Fault[] = []
  let wrongs: Fault[] = []
  let [begins, tally] = [0, nothing()]
  let woundMs = readings[0] ? msOf(readings[0]) : 0
  readings.forEach((reading, i) => {
    const wrong = wrongOf(reading, clock)
    const fault = faultOf(reading, woundMs, clock, wrong, tally)
    if (wrong && !fault) wrongs.push(wrong)
    if (fault) {
      faults.push(fault)
      ;[begins, tally, wrongs] = [i, nothing(), []]
    }
    if (reading.wound) woundMs = msOf(reading)
  })
  return { begins, faults, wrongs }
}

/** What was heard wrong at a reading. */
function wrongOf(reading: ShelfReading, clock: ShelfClock): Fault | null {
  const { at, strikeRight, chimeRight, quarter, selfCorrected } = reading
  const count = wrongCount(reading, clock)
  if (count) {
    const kind = clock.countWheel && isOnTheWheel(count.heard) ? 'outOfStep' : 'miscounted'
    return { kind, at, ...count }
  }
  if (strikeRight === false) return { kind: 'strikeWrong', at }
  // Put wrong on purpose it plays wrong quarters until it has set itself right.
  const chimedWrong = (quarter?.right === false && selfCorrected === undefined) || chimeRight === false
  return chimedWrong ? { kind: 'chimeWrong', at } : null
}

function faultOf(
  reading: ShelfReading,
  woundMs: number,
  clock: ShelfClock,
  wrong: Fault | null,
  tally: Tally,
): Fault | null {
  if (reading.stopped && !ranDown(reading, woundMs, clock)) return { kind: 'stopped', at: reading.at }
  if (!wrong) {
    // Righted: an hour, a half or all twelve were heard right.
    if (reading.hour || reading.half !== undefined || reading.twelveRight) tally.isOut = false
    return null
  }
  return isTooOften(wrong, tally) ? wrong : null
}

function isTooOften({ kind }: Fault, tally: Tally): boolean {
  if (kind === 'outOfStep') {
    if (!tally.isOut) tally.timesOut += 1
    tally.isOut = true
    return tally.timesOut >= timesOutOfStep
  }
  return kind === 'chimeWrong' ? ++tally.chimes >= wrongsOfAFault : ++tally.strikes >= wrongsOfAFault
}
