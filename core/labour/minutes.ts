import { minuteMs } from '../calendar/units.ts'
import { type Instant, instantMs } from '../calendar/zone.ts'

/** The longest one stretch of work can be before it is taken for a clock that was forgotten, in minutes. Our own rule. */
export const longestStretchMinutes = 16 * 60

/** The minute an instant lies in, counted since 1970. */
const minuteOfInstant = (at: Instant): number => Math.floor((instantMs(at) ?? Number.NaN) / minuteMs)

/**
 * Whole minutes from the minute begun at `from` to the minute begun at `to`. Stretches that meet add up to exactly the
 * stretch they make together, across midnight and changes of the clocks alike: instants know neither.
 */
export const labourMinutes = (from: Instant, to: Instant): number =>
  minuteOfInstant(to) - minuteOfInstant(from)

/** One labour entry, as far as its time counts. */
export interface LabourSpan {
  readonly startedAt: Instant
  /** Null while its clock runs. */
  readonly endedAt: Instant | null
  readonly struckReason: string | null
}

/** The minutes an entry counts for, a running one up to `now`; none when it is struck out. */
export const entryMinutes = ({ startedAt, endedAt, struckReason }: LabourSpan, now: Instant): number =>
  struckReason === null ? Math.max(0, labourMinutes(startedAt, endedAt ?? now)) : 0

/** The minutes of all entries together. */
export const totalMinutes = (entries: readonly LabourSpan[], now: Instant): number =>
  entries.reduce((sum, entry) => sum + entryMinutes(entry, now), 0)

/** Minutes as whole hours and the minutes over. */
export const hoursAndMinutes = (minutes: number): { hours: number; minutes: number } => ({
  hours: Math.floor(minutes / 60),
  minutes: minutes % 60,
})
