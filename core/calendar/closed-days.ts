import { dayOf } from './civil.ts'
import { openSpans, type WorkCalendar } from './opening.ts'
import { civilDateOf } from './zone.ts'

/** A function that counts the days between two instants, in milliseconds, on which the shop does not open: neither the day of the first nor that of the second. */
export function closedDaysBetween(
  calendar: WorkCalendar,
  timeZone: string,
): (fromMs: number, toMs: number) => number {
  const dayAt = (ms: number) => dayOf(civilDateOf(new Date(ms).toISOString(), timeZone)) ?? 0
  return (fromMs, toMs) => {
    let closed = 0
    for (let day = dayAt(fromMs) + 1; day < dayAt(toMs); day++)
      if (openSpans(calendar, day).length === 0) closed += 1
    return closed
  }
}
