import { civilDate, dayOf, weekdayOfDay } from '../calendar/civil.ts'
import { civilDateOf, type Instant } from '../calendar/zone.ts'

/** How many of the last days, weeks, months and years with a copy keep one; `years` null: every year does. Whole numbers from 0. */
export interface KeepingPolicy {
  readonly days: number
  readonly weeks: number
  readonly months: number
  readonly years: number | null
}

/** Our own default, not a published rule: two weeks by the day, two months by the week, a year by the month, and every year. */
export const usualKeeping: KeepingPolicy = { days: 14, weeks: 8, months: 12, years: null }

/** So many of the last days on which copies were made keep all of theirs: what was made before an import outlives the evening's. */
const wholeDays = 2

const weekOf = (date: string): string => {
  const day = dayOf(date) ?? 0
  return civilDate(day - weekdayOfDay(day) + 1)
}

/** The newest of each span, of the `count` newest spans that have one. `newestFirst` has the newest first. */
function newestOfEach(
  newestFirst: readonly Instant[],
  count: number,
  spanOf: (at: Instant) => string,
): Instant[] {
  const newest = new Map<string, Instant>()
  for (const at of newestFirst) if (!newest.has(spanOf(at))) newest.set(spanOf(at), at)
  return [...newest.values()].slice(0, count)
}

/**
 * Which of the copies made at `instants` are kept, the newest first. The newest always is. No clock is asked: spans without a copy do
 * not count, so that neither a long holiday nor a computer whose clock jumps takes a copy away.
 */
export function keptCopies(instants: readonly Instant[], policy: KeepingPolicy, timeZone: string): Instant[] {
  const newestFirst = [...new Set(instants)].toSorted().toReversed()
  const dayAt = new Map(newestFirst.map(at => [at, civilDateOf(at, timeZone)]))
  const dateOf = (at: Instant) => dayAt.get(at) ?? ''
  const whole = new Set([...new Set(dayAt.values())].slice(0, wholeDays))
  const kept = new Set([
    ...newestFirst.slice(0, 1),
    ...newestFirst.filter(at => whole.has(dateOf(at))),
    ...newestOfEach(newestFirst, policy.days, dateOf),
    ...newestOfEach(newestFirst, policy.weeks, at => weekOf(dateOf(at))),
    ...newestOfEach(newestFirst, policy.months, at => dateOf(at).slice(0, 7)),
    ...newestOfEach(newestFirst, policy.years ?? Number.POSITIVE_INFINITY, at => dateOf(at).slice(0, 4)),
  ])
  return newestFirst.filter(at => kept.has(at))
}
