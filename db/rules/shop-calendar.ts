import { type WorkCalendar, workCalendar } from '../../core/calendar/work.ts'
import type { Read } from '../file/ledger.ts'
import { question } from '../rows/question.ts'
import { readSettings } from '../rows/settings.ts'
import { holidays } from '../schema/index.ts'
import { accepted } from './checked-in.ts'

const closedDays = question(read =>
  read.select({ on: holidays.onDate }).from(holidays).orderBy(holidays.onDate),
)

/** The dates on which the shop stays shut, in order. */
export const holidayDates = (read: Read): string[] =>
  closedDays(read)
    .all()
    .map(({ on }) => on)

/** When the shop is open, by its settings and its closed days. */
export const shopCalendar = (read: Read): WorkCalendar =>
  accepted(workCalendar({ week: readSettings(read).hours.week, holidays: holidayDates(read) }))
