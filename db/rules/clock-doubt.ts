import { type ClockDoubt, clockDoubt } from '../../core/calendar/clock-doubt.ts'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { Read } from '../file/ledger.ts'
import { lastEntryAt } from '../rows/day-book.ts'
import { refuse } from '../rows/refusal.ts'
import { isShopOpen, readSettings } from '../rows/settings.ts'
import { shopCalendar } from './shop-calendar.ts'

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
  const { place } = readSettings(read)
  const dayOf = (instant: string) => civilDateOf(instant, place.timeZone)
  const doubt = clockDoubt({ last, now }, shopCalendar(read), place.timeZone)
  return doubt && { doubt, lastOn: dayOf(last), today: dayOf(now) }
}

const codes = { behind: 'clock.doubtedBehind', ahead: 'clock.doubtedAhead' } as const

/** Refuses to write by a clock that is in doubt, until somebody has said that it is right (`shop.confirmClock`). */
export function refuseDoubtedClock(read: Read, now: string): void {
  const doubted = doubtedClock(read, now)
  if (doubted) refuse(codes[doubted.doubt], '', { today: doubted.today, last: doubted.lastOn })
}
