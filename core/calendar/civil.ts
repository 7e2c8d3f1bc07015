import { tz } from '@date-fns/tz'
import { addMonths as laterByMonths } from 'date-fns'
import { dayMs } from './units.ts'

/** A civil date, `YYYY-MM-DD`, of the years 1583 (where ISO 8601 begins without agreement) to 9999. */
export type CivilDate = string

const civilText = /^(\d{4})-(\d{2})-(\d{2})$/

/** The day's number, 0 on 1970-01-01, or undefined when `text` is no civil date. */
export function dayOf(text: string): number | undefined {
  const [, year, month, date] = civilText.exec(text) ?? []
  const day = Date.UTC(Number(year), Number(month) - 1, Number(date)) / dayMs
  return inCalendar(day) && civilDate(day) === text ? day : undefined
}

/** First and last day number of the calendar. */
export const firstDay = Date.UTC(1583, 0, 1) / dayMs
export const finalDay = Date.UTC(9999, 11, 31) / dayMs

/** Whether a day number lies in the calendar. */
export const inCalendar = (day: number): boolean => day >= firstDay && day <= finalDay

/** The date of a day number. Throws a RangeError outside the calendar. */
export function civilDate(day: number): CivilDate {
  if (!inCalendar(day)) throw new RangeError(`outside the calendar: day ${day}`)
  return new Date(day * dayMs).toISOString().slice(0, 10)
}

/** Whether `text` is a date that exists. */
export const isCivilDate = (text: string): text is CivilDate => dayOf(text) !== undefined

/** The date `days` later (earlier when negative). */
export const addDays = (date: CivilDate, days: number): CivilDate => civilDate(dayNumber(date) + days)

/** How many days `to` lies after `from`; negative when before. */
export const daysBetween = (from: CivilDate, to: CivilDate): number => dayNumber(to) - dayNumber(from)

/**
 * The same date `months` later (earlier when negative), or that month's last day where it has no such date (EU Reg.
 * 1182/71 Art. 3(2)(c); Dodds v Walker [1981] 1 WLR 1027). Not associative: reckon every renewal from the original
 * start.
 */
export const addMonths = (date: CivilDate, months: number): CivilDate =>
  civilDate(laterByMonths(dayNumber(date) * dayMs, months, { in: utc }).getTime() / dayMs)

const utc = tz('UTC')

/** 1 for Monday to 7 for Sunday (ISO 8601). */
export const weekday = (date: CivilDate): number => weekdayOfDay(dayNumber(date))

/** 1 for Monday to 7 for Sunday; day 0 was a Thursday. */
export const weekdayOfDay = (day: number): number => ((((day + 3) % 7) + 7) % 7) + 1

function dayNumber(date: CivilDate): number {
  const day = dayOf(date)
  if (day === undefined) throw new RangeError(`not a date: ${date}`)
  return day
}
