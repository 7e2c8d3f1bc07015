import { asc } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { Read } from '../ledger.ts'
import { holidays, people, shelfPlaces } from '../schema/index.ts'
import { isShopOpen, readSettings } from '../settings.ts'

/** What every page needs to know of the shop: its settings, who works there, where clocks stand, and which day it is there. */
export function shopView(read: Read, at: string) {
  if (!isShopOpen(read)) return { open: false as const }
  const settings = readSettings(read)
  return {
    open: true as const,
    settings,
    people: read.select().from(people).orderBy(asc(people.name)).all(),
    places: read.select().from(shelfPlaces).orderBy(asc(shelfPlaces.walkOrder)).all(),
    holidays: read.select().from(holidays).orderBy(asc(holidays.onDate)).all(),
    today: civilDateOf(at, settings.place.timeZone),
    at,
  }
}
