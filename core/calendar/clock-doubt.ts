import { addDays, type CivilDate } from './civil.ts'
import { isOpenOn, type WorkCalendar } from './opening.ts'
import { dayMs } from './units.ts'
import { civilDateOf, type Instant } from './zone.ts'

/** Against the last entry the computer's clock stands before it, or further after it than the shop's habits explain. */
export type ClockDoubt = 'behind' | 'ahead'

/** Whether a day on which the shop is open lies between the two, neither of them counted. */
function openDayBetween(calendar: WorkCalendar, from: CivilDate, to: CivilDate): boolean {
  for (let day = addDays(from, 1); day < to; day = addDays(day, 1)) if (isOpenOn(calendar, day)) return true
  return false
}

/**
 * Why the computer's clock is not taken at its word: `now` lies before the last entry, or more than 24 hours after it with a day
 * between on which the shop was open and nothing was entered. Null where nothing speaks against it. (Common practice: a computer
 * whose battery is empty starts years away; nobody notices before the papers bear the date.)
 */
export function clockDoubt(
  { last, now }: { readonly last: Instant; readonly now: Instant },
  calendar: WorkCalendar,
  timeZone: string,
): ClockDoubt | null {
  if (now < last) return 'behind'
  if (Date.parse(now) - Date.parse(last) <= dayMs) return null
  const days = [civilDateOf(last, timeZone), civilDateOf(now, timeZone)] as const
  return openDayBetween(calendar, ...days) ? 'ahead' : null
}
