import { asc } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { Settings, SettingsGroup } from '../../core/shop/settings.ts'
import type { Read } from '../file/ledger.ts'
import { stampOf } from '../rows/seen.ts'
import { isShopOpen, readSettings } from '../rows/settings.ts'
import { doubtedClock } from '../rules/clock-doubt.ts'
import { dayBook, holidays, people, shelfPlaces } from '../schema/index.ts'

/** What tells this ledger from any other: the beginning of its first day-book row's hash. */
const ledgerMark = (read: Read): string =>
  read
    .select({ hash: dayBook.hash })
    .from(dayBook)
    .orderBy(asc(dayBook.id))
    .limit(1)
    .get()
    ?.hash.slice(0, 12) ?? ''

/** The stamp of each group of settings, for whoever changes it. */
const stampsOf = (settings: Settings): Readonly<Record<SettingsGroup, string>> =>
  Object.fromEntries(Object.entries(settings).map(([group, value]) => [group, stampOf(value)])) as Record<
    SettingsGroup,
    string
  >

/** What every page needs to know of the shop: its settings, who works there, where clocks stand, and which day it is there. */
export function shopView(read: Read, at: string) {
  if (!isShopOpen(read)) return { open: false as const }
  const settings = readSettings(read)
  return {
    open: true as const,
    settings,
    stamps: stampsOf(settings),
    people: read.select().from(people).orderBy(asc(people.name)).all(),
    places: read.select().from(shelfPlaces).orderBy(asc(shelfPlaces.walkOrder)).all(),
    holidays: read.select().from(holidays).orderBy(asc(holidays.onDate)).all(),
    ledger: ledgerMark(read),
    today: civilDateOf(at, settings.place.timeZone),
    at,
    clock: doubtedClock(read, at),
  }
}
