import { unless } from '../checked.ts'
import { type Checked, type Problem, problem } from '../problems.ts'
import { dateProblems } from './checks.ts'
import { type CivilDate, dayOf, weekdayOfDay } from './civil.ts'
import { dayOfMinute, type LocalMinute, minuteOf } from './local.ts'
import { dayMinutes } from './units.ts'

/**
 * One stretch of open hours: a weekday (1 Monday to 7 Sunday) from one time to another, `HH:MM`; half-open, and
 * `24:00` may end it.
 */
export interface OpenHours {
  readonly day: number
  readonly from: string
  readonly to: string
}

/** The shop's week. A break is the gap between two stretches of one day. */
export type WorkWeek = readonly OpenHours[]

/** Days on which the shop stays shut, both included. */
export interface Closure {
  readonly from: CivilDate
  readonly to: CivilDate
}

/** When the shop is open: its week, less holidays and closures. */
export interface Opening {
  readonly week: WorkWeek
  readonly holidays: readonly CivilDate[]
  readonly closures?: readonly Closure[] | undefined
}

interface Span {
  readonly from: number
  readonly to: number
}

/** An opening checked and ready to reckon with; made by `workCalendar`. */
export interface WorkCalendar {
  readonly spansByWeekday: readonly (readonly Span[])[]
  readonly holidays: ReadonlySet<number>
  readonly closures: readonly Span[]
}

/**
 * The calendar of an opening. Problems: `calendar.weekday`, `calendar.time`, `calendar.endsBeforeItBegins`,
 * `calendar.overlap`, `calendar.closedAllWeek`, `date.notADate`.
 */
export function workCalendar({ week, holidays, closures = [] }: Opening): Checked<WorkCalendar> {
  const problems = [
    ...weekProblems(week),
    ...holidays.flatMap((date, i) => dateProblems(date, `holidays[${i}]`)),
  ]
  closures.forEach((closure, i) => {
    problems.push(...closureProblems(closure, `closures[${i}]`))
  })
  return unless(problems, () => ({
    spansByWeekday: [1, 2, 3, 4, 5, 6, 7].map(day => spansOf(week, day)),
    holidays: new Set(holidays.map(date => dayOf(date) ?? 0)),
    closures: closures.map(({ from, to }) => ({ from: dayOf(from) ?? 0, to: dayOf(to) ?? 0 })),
  }))
}

function closureProblems({ from, to }: Closure, field: string): Problem[] {
  const problems = [...dateProblems(from, `${field}.from`), ...dateProblems(to, `${field}.to`)]
  return problems.length === 0 && to < from
    ? [problem('calendar.endsBeforeItBegins', `${field}.to`)]
    : problems
}

function weekProblems(week: WorkWeek): Problem[] {
  if (week.length === 0) return [problem('calendar.closedAllWeek', 'week')]
  const problems = week.flatMap((hours, i) => hoursProblems(hours, `week[${i}]`))
  return problems.length > 0 ? problems : overlapProblems(week)
}

function hoursProblems({ day, from, to }: OpenHours, field: string): Problem[] {
  const problems: Problem[] = []
  if (!Number.isInteger(day) || day < 1 || day > 7) problems.push(problem('calendar.weekday', `${field}.day`))
  const [start, end] = [minuteOf(from), endMinute(to)]
  if (start === undefined) problems.push(problem('calendar.time', `${field}.from`, { text: from }))
  if (end === undefined) problems.push(problem('calendar.time', `${field}.to`, { text: to }))
  if (start !== undefined && end !== undefined && end <= start)
    problems.push(problem('calendar.endsBeforeItBegins', `${field}.to`))
  return problems
}

/** Stretches of one day that run into one another; the later entry of the two is named. */
function overlapProblems(week: WorkWeek): Problem[] {
  const inOrder = week
    .map((hours, entry) => ({ ...hours, entry }))
    .sort((a, b) => a.day - b.day || (a.from < b.from ? -1 : 1))
  return inOrder.flatMap((hours, i) => {
    const before = inOrder[i - 1]
    const overlaps = before?.day === hours.day && hours.from < before.to
    return overlaps ? [problem('calendar.overlap', `week[${Math.max(before.entry, hours.entry)}]`)] : []
  })
}

const endMinute = (to: string): number | undefined => (to === '24:00' ? dayMinutes : minuteOf(to))

const spansOf = (week: WorkWeek, day: number): Span[] =>
  week
    .filter(hours => hours.day === day)
    .map(({ from, to }) => ({ from: minuteOf(from) ?? 0, to: endMinute(to) ?? 0 }))
    .sort((a, b) => a.from - b.from)

const noSpans: readonly Span[] = []

/** The open stretches of a day, in minutes of the day. */
export function openSpans(calendar: WorkCalendar, day: number): readonly Span[] {
  if (calendar.holidays.has(day)) return noSpans
  if (calendar.closures.some(({ from, to }) => from <= day && day <= to)) return noSpans
  return calendar.spansByWeekday[weekdayOfDay(day) - 1] ?? noSpans
}

/** Whether the shop is open at that minute. */
export const isOpenAt = (calendar: WorkCalendar, at: LocalMinute): boolean => {
  const day = dayOfMinute(at)
  const minute = at - day * dayMinutes
  return openSpans(calendar, day).some(({ from, to }) => from <= minute && minute < to)
}

/** Whether the shop is open at all on that date. */
export const isOpenOn = (calendar: WorkCalendar, date: CivilDate): boolean => {
  const day = dayOf(date)
  return day !== undefined && openSpans(calendar, day).length > 0
}
