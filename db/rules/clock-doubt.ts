import { type ClockDoubt, clockDoubt } from '../../core/calendar/clock-doubt.ts'
import { workCalendar } from '../../core/calendar/work.ts'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { Read } from '../file/ledger.ts'
import { lastEntryAt } from '../rows/day-book.ts'
import { question } from '../rows/question.ts'
import { refuse } from '../rows/refusal.ts'
import { isShopOpen, readSettings } from '../rows/settings.ts'
import { holidays } from '../schema/index.ts'
import { accepted } from './checked-in.ts'

const closedDays = question(read => read.select({ on: holidays.onDate }).from(holidays))

/** What speaks against the computer's clock, and the days it is about, on the shop's calendar. */
export interface DoubtedClock {
  readonly doubt: ClockDoubt
  /** The day of the last entry. */
  readonly lastOn: string
  /** The day it is by the computer's clock. */
  readonly today: string
}

/** Whether the computer's clock is in doubt at `now`; null while it is not, and before the shop is open. */
export function doubtedClock(read: Read, now: string): DoubtedClock | null {
  const last = lastEntryAt(read)
  if (last === undefined || !isShopOpen(read)) return null
  const { place, hours } = readSettings(read)
  const closed = closedDays(read)
    .all()
    .map(({ on }) => on)
  const calendar = accepted(workCalendar({ week: hours.week, holidays: closed }))
  const dayOf = (instant: string) => civilDateOf(instant, place.timeZone)
  const doubt = clockDoubt({ last, now }, calendar, place.timeZone)
  return doubt && { doubt, lastOn: dayOf(last), today: dayOf(now) }
}

const codes = { behind: 'clock.doubtedBehind', ahead: 'clock.doubtedAhead' } as const

/** Refuses to write by a clock that is in doubt, until somebody has said that it is right (`shop.confirmClock`). */
export function refuseDoubtedClock(read: Read, now: string): void {
  const doubted = doubtedClock(read, now)
  if (doubted) refuse(codes[doubted.doubt], '', { today: doubted.today, last: doubted.lastOn })
}
