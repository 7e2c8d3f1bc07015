import { bad, type Checked, good, problem } from '../problems.ts'
import { workTimeProblems } from './checks.ts'
import { finalDay, firstDay, inCalendar } from './civil.ts'
import { dayOfMinute, type LocalMinute, type LocalTime, localMinute, localTime } from './local.ts'
import { isOpenAt, openSpans, type WorkCalendar } from './opening.ts'
import { dayMinutes } from './units.ts'

export {
  isOpenAt,
  isOpenOn,
  type Opening,
  type WorkCalendar,
  type WorkWeek,
  workCalendar,
} from './opening.ts'

/**
 * The minute after which `minutes` of open time have passed since `from`, or undefined when the calendar ends
 * first.
 */
function workMinuteAfter(
  calendar: WorkCalendar,
  from: LocalMinute,
  minutes: number,
): LocalMinute | undefined {
  if (minutes > (finalDay + 1) * dayMinutes - from) return undefined
  let left = minutes
  for (let day = dayOfMinute(from); day <= finalDay; day++)
    for (const span of openSpans(calendar, day)) {
      const start = Math.max(day * dayMinutes + span.from, from)
      const open = day * dayMinutes + span.to - start
      if (open <= 0) continue
      if (left <= open) return start + left
      left -= open
    }
  return undefined
}

/** The latest minute from which `minutes` of open time pass until `to`, or undefined when the calendar begins later. */
function workMinuteBefore(calendar: WorkCalendar, to: LocalMinute, minutes: number): LocalMinute | undefined {
  if (minutes > to - firstDay * dayMinutes) return undefined
  let left = minutes
  for (let day = dayOfMinute(to); day >= firstDay; day--)
    for (const span of openSpans(calendar, day).toReversed()) {
      const end = Math.min(day * dayMinutes + span.to, to)
      const open = end - (day * dayMinutes + span.from)
      if (open <= 0) continue
      if (left <= open) return end - left
      left -= open
    }
  return undefined
}

/** The first open minute at or after `at`, or undefined when there is none before the calendar ends. */
export const nextOpenMinute = (calendar: WorkCalendar, at: LocalMinute): LocalMinute | undefined =>
  workMinuteAfter(calendar, at, 0)

/** The last open minute before `at` and after `after`, or undefined. */
export function lastOpenMinute(
  calendar: WorkCalendar,
  at: LocalMinute,
  after: LocalMinute,
): LocalMinute | undefined {
  for (let day = dayOfMinute(at); day >= dayOfMinute(after); day--)
    for (const span of openSpans(calendar, day).toReversed()) {
      const end = Math.min(day * dayMinutes + span.to, at) - 1
      if (end >= day * dayMinutes + span.from) return end > after ? end : undefined
    }
  return undefined
}

/** Whether the shop is open at the local time; false when that is none. */
export function isOpen(calendar: WorkCalendar, at: LocalTime): boolean {
  const minute = localMinute(at)
  return minute !== undefined && isOpenAt(calendar, minute)
}

/** The first open minute at or after the local time; `calendar.neverOpen` when there is none. */
export const nextOpen = (calendar: WorkCalendar, at: LocalTime): Checked<LocalTime> =>
  addWorkMinutes(calendar, at, 0)

/**
 * The local time after `minutes` of open hours, counted from the first open minute at or after `from`. Work that
 * fills a stretch to its end is done at closing time. Problems: `date.notALocalTime`, `calendar.minutes`,
 * `calendar.neverOpen`.
 */
export const addWorkMinutes = (
  calendar: WorkCalendar,
  from: LocalTime,
  minutes: number,
): Checked<LocalTime> => reckoned(from, 'from', minutes, at => workMinuteAfter(calendar, at, minutes))

/**
 * The latest local time from which `minutes` of open hours pass until `to`; the mirror of `addWorkMinutes`. Same
 * problems, with the field `to`.
 */
export const subtractWorkMinutes = (
  calendar: WorkCalendar,
  to: LocalTime,
  minutes: number,
): Checked<LocalTime> => reckoned(to, 'to', minutes, at => workMinuteBefore(calendar, at, minutes))

function reckoned(
  local: LocalTime,
  field: string,
  minutes: number,
  reckon: (at: LocalMinute) => LocalMinute | undefined,
): Checked<LocalTime> {
  const at = localMinute(local)
  const problems = workTimeProblems(local, field, minutes)
  if (at === undefined || problems.length > 0) return bad(problems)
  const result = reckon(at)
  return result === undefined || !inCalendar(dayOfMinute(result))
    ? bad([problem('calendar.neverOpen', field)])
    : good(localTime(result))
}
