import { dayMinutes, dayMs } from '../calendar/units.ts'
import type { Rate, Segment } from '../rate/rate.ts'
import { movements, stagesMinutes } from './movement.ts'
import type { RunInPolicy } from './policy.ts'
import { expectedBlows, type Movement, type ShelfReading } from './shelf-reading.ts'

/**
 * One thing the clock has not shown yet, with its figures. Numbers are days, seconds a day, or counts, as their
 * names say.
 */
export type StillToShow =
  | {
      readonly code: 'readings'
      readonly values: { readings: number; fewest: number; days: number; fewestDays: number }
    }
  | { readonly code: 'running'; readonly values: { ranDays: number; neededDays: number } }
  | { readonly code: 'wholeWind'; readonly values: { windEveryDays: number } }
  | { readonly code: 'rate'; readonly values: { ratePerDay: number; limitPerDay: number } }
  | {
      readonly code: 'strike' | 'chime' | 'sounds' | 'beat'
      readonly values: Readonly<Record<string, never>>
    }

/**
 * A rate needs more than one day: at least three readings over at least two days (common practice: never judge from
 * one day).
 */
const fewestReadings = 3
const fewestDays = 2

/** What a test is judged by. */
export interface Evidence {
  readonly movement: Movement
  readonly policy: RunInPolicy
  readonly limitPerDay: number
  /** The readings of the running test. */
  readonly readings: readonly ShelfReading[]
  readonly rate: Rate
  /** Gain or loss over each whole wind of the running test. */
  readonly winds: number
  readonly ranDays: number
}

/** Days of running the policy asks for. */
export const neededDays = (policy: RunInPolicy, { duration }: Movement): number =>
  stagesMinutes(policy.stages, duration) / dayMinutes

/** Days from the first to the last reading of a segment. */
const segmentDays = ({ from, to }: Segment): number => (Date.parse(to) - Date.parse(from)) / dayMs

/** Whether the segment is long enough to judge a rate by. */
export const canBeJudged = (segment: Segment): boolean =>
  segment.readings >= fewestReadings && segmentDays(segment) >= fewestDays

/** Everything that still has to be shown before the clock may pass. */
export function stillToShow(evidence: Evidence): StillToShow[] {
  return [...running(evidence), ...wholeWind(evidence), ...steadyRate(evidence), ...soundsAndBeat(evidence)]
}

function running({ policy, movement, ranDays }: Evidence): StillToShow[] {
  const needed = neededDays(policy, movement)
  return ranDays < needed ? [{ code: 'running', values: { ranDays, neededDays: needed } }] : []
}

/** A whole wind must be seen where the policy lasts as long as one. */
function wholeWind({ policy, movement, winds }: Evidence): StillToShow[] {
  const { windEveryDays } = movements[movement.duration]
  const asked = neededDays(policy, movement) >= windEveryDays
  return asked && winds === 0 ? [{ code: 'wholeWind', values: { windEveryDays } }] : []
}

function steadyRate({ rate, limitPerDay }: Evidence): StillToShow[] {
  const last = rate.segments.at(-1)
  if (!last || !canBeJudged(last)) {
    const values = {
      readings: last?.readings ?? 0,
      fewest: fewestReadings,
      days: last ? segmentDays(last) : 0,
      fewestDays,
    }
    return [{ code: 'readings', values }]
  }
  const ratePerDay = last.robustRatePerDay ?? 0
  return Math.abs(ratePerDay) > limitPerDay ? [{ code: 'rate', values: { ratePerDay, limitPerDay } }] : []
}

function soundsAndBeat({ movement, readings }: Evidence): StillToShow[] {
  const missing: StillToShow[] = []
  const { strike, chimes } = movement
  const struck = readings.some(reading => strikeHeardRight(reading, movement))
  const chimed = readings.some(reading => reading.chimeRight)
  if ((strike === 'unknown' && !struck) || (chimes === null && !chimed))
    missing.push({ code: 'sounds', values: {} })
  if (strike !== 'none' && strike !== 'unknown' && !struck) missing.push({ code: 'strike', values: {} })
  if (chimes && !chimed) missing.push({ code: 'chime', values: {} })
  if (readings.findLast(reading => reading.inBeat !== undefined)?.inBeat === false)
    missing.push({ code: 'beat', values: {} })
  return missing
}

const strikeHeardRight = ({ strikeRight, heard }: ShelfReading, { pattern }: Movement): boolean =>
  strikeRight === true ||
  (heard !== undefined && pattern !== null && expectedBlows(pattern, heard.at) === heard.blows)
