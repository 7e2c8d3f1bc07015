import { tzOffset } from '@date-fns/tz'
import type { CivilDate } from './civil.ts'
import { type LocalTime, localMinute, localTime } from './local.ts'
import { dayMs, minuteMs } from './units.ts'

/** A point in time, ISO 8601 in UTC with milliseconds: `2026-11-25T09:00:00.000Z`. */
export type Instant = string

const isoInstant = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?Z$/

/**
 * Milliseconds since 1970 of an ISO 8601 instant ending in Z, or undefined when `text` is none (also where the date
 * does not exist).
 */
export function instantMs(text: string): number | undefined {
  const ms = isoInstant.test(text) ? Date.parse(text) : Number.NaN
  // A 30 February is read as a day of March: the day tells.
  return new Date(ms).getUTCDate() === Number(text.slice(8, 10)) ? ms : undefined
}

/** What the clocks of the zone (an IANA name) show at the instant, to the minute begun. */
export function localOf(instant: Instant, timeZone: string): LocalTime {
  const ms = requiredMs(instant)
  return localTime(Math.floor(ms / minuteMs + offsetMinutes(ms, timeZone)))
}

/** The date in the zone at the instant. */
export const civilDateOf = (instant: Instant, timeZone: string): CivilDate =>
  localOf(instant, timeZone).slice(0, 10)

/**
 * The instant at which the zone's clocks show `local`. Where they show it twice (clocks put back) it is the first;
 * where they skip it (clocks put forward) it is the first minute they show after.
 */
export function instantOf(local: LocalTime, timeZone: string): Instant {
  const minute = localMinute(local)
  if (minute === undefined) throw new RangeError(`not a local time: ${local}`)
  const wall = minute * minuteMs
  const offsets = [wall - dayMs, wall + dayMs].map(ms => offsetMinutes(ms, timeZone))
  const shown = offsets
    .map(offset => ({ offset, ms: wall - offset * minuteMs }))
    .filter(({ offset, ms }) => offsetMinutes(ms, timeZone) === offset)
    .map(({ ms }) => ms)
  const ms = shown.length > 0 ? Math.min(...shown) : endOfGap(wall, offsets, timeZone)
  return new Date(ms).toISOString()
}

/** The instant the offset changes, found by halving the span between the two readings of a skipped wall time. */
function endOfGap(wall: number, offsets: readonly number[], timeZone: string): number {
  const before = Math.min(...offsets)
  let early = wall - Math.max(...offsets) * minuteMs
  let late = wall - before * minuteMs
  while (late - early > minuteMs) {
    const middle = early + Math.floor((late - early) / 2 / minuteMs) * minuteMs
    if (offsetMinutes(middle, timeZone) === before) early = middle
    else late = middle
  }
  return late
}

function offsetMinutes(ms: number, timeZone: string): number {
  const offset = tzOffset(timeZone, new Date(ms))
  if (Number.isNaN(offset)) throw new RangeError(`not a time zone: ${timeZone}`)
  return offset
}

function requiredMs(instant: Instant): number {
  const ms = instantMs(instant)
  if (ms === undefined) throw new RangeError(`not an instant: ${instant}`)
  return ms
}

/** The first instant of a date in the zone. */
export const dayBegins = (on: CivilDate, timeZone: string): Instant => instantOf(`${on}T00:00`, timeZone)

/** The last instant of a date in the zone. */
export const dayEnds = (on: CivilDate, timeZone: string): Instant =>
  new Date(Date.parse(instantOf(`${on}T23:59`, timeZone)) + minuteMs - 1).toISOString()
