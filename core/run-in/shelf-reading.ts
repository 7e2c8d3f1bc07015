import { minuteOf } from '../calendar/local.ts'
import { dayMinutes, hourMs } from '../calendar/units.ts'
import type { Reading } from '../rate/reading.ts'
import { blowsAt, type StrikePattern } from '../strike/blows.ts'
import type { Duration, OrUnknown, Strike } from '../vocabulary/clock.ts'
import { movements } from './movement.ts'

/** A reading made on the round, with what was heard and seen. */
export interface ShelfReading extends Reading {
  /**
   * Blows heard, and the time on the clock's own dial they were heard at, `HH:MM`: a single blow alone tells
   * nothing (GO).
   */
  readonly heard?: { readonly at: string; readonly blows: number } | undefined
  readonly strikeRight?: boolean | undefined
  readonly chimeRight?: boolean | undefined
  readonly inBeat?: boolean | undefined
}

/** What the clock is, as far as its readings are judged by it. */
export interface Movement {
  readonly duration: Duration
  readonly strike: OrUnknown<Strike>
  /** What it sounds by itself; null where it sounds nothing or it is not known. */
  readonly pattern: StrikePattern | null
  /** null: nobody has looked yet. */
  readonly chimes: boolean | null
}

/** A fault that starts the test again. */
export type Trouble =
  | { readonly kind: 'stopped' | 'strikeWrong' | 'chimeWrong'; readonly at: string }
  | {
      /**
       * A count wheel can be out of step with the hands; a rack cannot, so a wrong count there is a fault of its
       * own (GO).
       */
      readonly kind: 'outOfStep' | 'miscounted'
      readonly at: string
      readonly expected: number
      readonly heard: number
    }

/** Milliseconds of an instant already checked. */
export const msOf = ({ at }: Reading): number => Date.parse(at)

/** Whether a stopped clock has merely run down: longer since the last wind than it runs. */
export const ranDown = (reading: ShelfReading, woundMs: number, { duration }: Movement): boolean =>
  Boolean(reading.stopped) && msOf(reading) - woundMs >= movements[duration].runningHours * hourMs

/** Everything wrong that a reading shows, stops that are mere running down apart. */
export function troublesOf(reading: ShelfReading, woundMs: number, movement: Movement): Trouble[] {
  const troubles: Trouble[] = []
  const { at } = reading
  if (reading.stopped && !ranDown(reading, woundMs, movement)) troubles.push({ kind: 'stopped', at })
  if (reading.strikeRight === false) troubles.push({ kind: 'strikeWrong', at })
  if (reading.chimeRight === false) troubles.push({ kind: 'chimeWrong', at })
  const count = miscount(reading, movement)
  return count ? [...troubles, count] : troubles
}

function miscount({ at, heard }: ShelfReading, { strike, pattern }: Movement): Trouble | undefined {
  if (!heard || pattern === null) return undefined
  const expected = expectedBlows(pattern, heard.at)
  if (expected === heard.blows) return undefined
  const elsewhere = strike === 'count-wheel' && everyCount(pattern).has(heard.blows)
  return { kind: elsewhere ? 'outOfStep' : 'miscounted', at, expected, heard: heard.blows }
}

/** The blows due at a time on the dial, `HH:MM`. */
export const expectedBlows = (pattern: StrikePattern, at: string): number =>
  blowsAt(pattern, minuteOf(at) ?? 0)

const everyCount = (pattern: StrikePattern): ReadonlySet<number> =>
  new Set(
    Array.from({ length: dayMinutes }, (_, minute) => blowsAt(pattern, minute)).filter(blows => blows > 0),
  )
