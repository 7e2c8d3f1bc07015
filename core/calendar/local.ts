import { civilDate, dayOf } from './civil.ts'
import { dayMinutes } from './units.ts'

/** A local time of the shop's clocks, `YYYY-MM-DDTHH:MM`. */
export type LocalTime = string

/** A local time as minutes since 1970-01-01T00:00, to reckon with. */
export type LocalMinute = number

const clockText = /^([01]\d|2[0-3]):([0-5]\d)$/

/** The minute of the day of `HH:MM`, 0 to 1439, or undefined. */
export function minuteOf(text: string): number | undefined {
  const [, hours, minutes] = clockText.exec(text) ?? []
  return hours === undefined ? undefined : Number(hours) * 60 + Number(minutes)
}

/** The local time as a number of minutes, or undefined when `text` is none. */
export function localMinute(text: string): LocalMinute | undefined {
  const day = text[10] === 'T' ? dayOf(text.slice(0, 10)) : undefined
  const minute = minuteOf(text.slice(11))
  return day === undefined || minute === undefined ? undefined : day * dayMinutes + minute
}

/** Whether `text` is a local time that exists in the calendar. */
export const isLocalTime = (text: string): text is LocalTime => localMinute(text) !== undefined

/** The day number a local minute falls on. */
export const dayOfMinute = (at: LocalMinute): number => Math.floor(at / dayMinutes)

/** The local time of a number of minutes. Throws a RangeError outside the calendar. */
export function localTime(at: LocalMinute): LocalTime {
  const day = dayOfMinute(at)
  const minute = at - day * dayMinutes
  return `${civilDate(day)}T${two(Math.floor(minute / 60))}:${two(minute % 60)}`
}

const two = (n: number): string => n.toString().padStart(2, '0')
