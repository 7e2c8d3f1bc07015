import { daysBetween, weekday } from '../calendar/civil.ts'
import type { WorkWeek } from '../calendar/opening.ts'
import { civilDateOf, type Instant, localOf } from '../calendar/zone.ts'

/** How a ledger stands to its last good copy. */
export interface CopyStanding {
  readonly now: Instant
  /** When the last good copy was made; null where there is none. */
  readonly copiedAt: Instant | null
  /** The first entry that stands in no copy; null where all do. */
  readonly uncopiedSince: Instant | null
  readonly week: WorkWeek
  /** IANA name. */
  readonly timeZone: string
}

/** When the shop closes on the day it is now, `HH:MM`; undefined on a weekday on which it is shut. */
const closingTime = ({ now, week, timeZone }: CopyStanding): string | undefined =>
  week
    .filter(({ day }) => day === weekday(civilDateOf(now, timeZone)))
    .map(({ to }) => to)
    .toSorted()
    .at(-1)

/** Why a copy is to be made now: the first look of a day, or the shop has closed; null where none is. Nothing entered, nothing copied. */
export function copyDue(standing: CopyStanding): 'day' | 'evening' | null {
  const { now, copiedAt, uncopiedSince, timeZone } = standing
  if (uncopiedSince === null) return null
  if (copiedAt === null || civilDateOf(copiedAt, timeZone) !== civilDateOf(now, timeZone)) return 'day'
  const closes = closingTime(standing)
  const timeOf = (at: Instant) => localOf(at, timeZone).slice(11)
  return closes !== undefined && timeOf(now) >= closes && timeOf(copiedAt) < closes ? 'evening' : null
}

/**
 * How many days ago the last copy was made, 0 or more, where that is late: `lateDays` or more with an entry that stands in no copy;
 * null where it is not late. Where there never was a copy, the days since the first entry.
 */
export function copyLateDays(
  { now, copiedAt, uncopiedSince, timeZone }: Omit<CopyStanding, 'week'>,
  lateDays: number,
): number | null {
  if (uncopiedSince === null) return null
  const days = daysBetween(civilDateOf(copiedAt ?? uncopiedSince, timeZone), civilDateOf(now, timeZone))
  return days >= lateDays ? days : null
}
