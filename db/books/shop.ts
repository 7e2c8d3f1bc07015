import { eq, sql } from 'drizzle-orm'
import type { Settings, SettingsGroup } from '../../core/shop/settings.ts'
import { type SomeSettings, settingsProblems } from '../../core/shop/settings-problems.ts'
import type { PlaceKind } from '../../core/vocabulary/work.ts'
import type { Write } from '../file/ledger.ts'
import { startSeriesAfter } from '../rows/numbering.ts'
import { enterPerson } from '../rows/people.ts'
import { Refusal, refuse } from '../rows/refusal.ts'
import { refuseStale, stampOf } from '../rows/seen.ts'
import { isShopOpen, keepSettings, readSettings } from '../rows/settings.ts'
import { verb } from '../rows/verb.ts'
import { dayOfDoing } from '../rules/issue.ts'
import { holidays, shelfPlaces } from '../schema/index.ts'

const theShop = { kind: 'shop', id: 1 } as const

/** What a new shop says of itself. */
export interface OpenShop {
  readonly settings: Settings
  readonly person: string
  /** The repair number to begin with, as when the shop's paper books go on here. */
  readonly firstRepairNumber: number
}

/** Refuses settings that the shop could not go by, with every problem in them. */
function refuseUnworkable(some: SomeSettings, currency: string, path = ''): void {
  const problems = settingsProblems(some, currency)
  if (problems.length > 0) throw new Refusal(problems.map(one => ({ ...one, field: path + one.field })))
}

/** Opens the shop: its settings, its first person, the number its repairs begin with. Once in a ledger's life. */
export const openShop = verb('shop.open', (tx, input: OpenShop) => {
  if (isShopOpen(tx)) refuse('shop.alreadyOpen')
  refuseUnworkable(input.settings, input.settings.place.currency, 'settings.')
  for (const group of Object.keys(input.settings) as SettingsGroup[])
    keepSettings(tx, group, input.settings[group])
  startSeriesAfter(tx, 'repair', input.firstRepairNumber - 1)
  return {
    subject: theShop,
    result: {
      personId: enterPerson(tx, { name: input.person, roles: ['owner'], initials: '', benchHours: '' }),
    },
  }
})

/** Refuses another currency once anything is written in this one: amounts of two currencies cannot stand in one ledger. */
function refuseOtherCurrency(tx: Write, currency: string): void {
  const { currency: now } = readSettings(tx).place
  if (currency === now) return
  const { papers, first, written } = tx.get<{ papers: number; first: string | null; written: number }>(sql`
    SELECT (SELECT count(*) FROM documents) AS papers, (SELECT number FROM documents ORDER BY id LIMIT 1) AS first,
      (SELECT count(*) FROM estimates WHERE document_id IS NULL) AS written`)
  if (papers + written > 0)
    refuse('place.currencyInUse', 'place.currency', {
      papers: papers + written,
      currency: now,
      first: first ?? '–',
    })
}

/** Groups of settings as they shall be, and the stamp of each as the writer has seen it. */
export type ChangeSettings = SomeSettings & {
  readonly seen: Readonly<Partial<Record<SettingsGroup, string>>> | null
}

/** Changes one or more groups of settings, each replaced whole. Papers issued before keep what they said. */
export const changeSettings = verb('shop.changeSettings', (tx, { seen, ...input }: ChangeSettings) => {
  if (!isShopOpen(tx)) refuse('shop.notOpen')
  const { currency } = input.place ?? readSettings(tx).place
  refuseOtherCurrency(tx, currency)
  refuseUnworkable(input, currency)
  for (const group of Object.keys(input) as SettingsGroup[]) {
    const value = input[group]
    if (value === undefined) continue
    refuseStale(tx, seen?.[group] ?? null, readSettings(tx)[group], ['shop.open', 'shop.changeSettings'])
    keepSettings(tx, group, value)
  }
  const changed = Object.keys(input) as SettingsGroup[]
  const now = readSettings(tx)
  const stamps = Object.fromEntries(changed.map(group => [group, stampOf(now[group])]))
  return { subject: theShop, result: { changed, stamps } }
})

/**
 * Says that the computer's clock is right although the last entry makes it doubtful (`doubtedClock`): entries go on from its time.
 * `today` is the day it showed when it was looked at.
 */
export const confirmClock = verb('shop.confirmClock', (tx, input: { today: string }, doing) => {
  const today = dayOfDoing(doing, readSettings(tx))
  if (input.today !== today) refuse('clock.otherDay', 'today', { today })
  return { subject: theShop, result: { today } }
})

/** Enters a place on the run-in shelf, last in walking order. */
export const addPlace = verb('shop.addPlace', (tx, input: { name: string; kind: PlaceKind }) => {
  const taken = tx
    .select()
    .from(shelfPlaces)
    .where(sql`${shelfPlaces.name} = ${input.name} COLLATE NOCASE`)
    .get()
  if (taken) refuse('place.nameTaken', 'name', { name: input.name })
  const last = tx
    .select({ last: sql<number>`ifnull(max(${shelfPlaces.walkOrder}), 0)` })
    .from(shelfPlaces)
    .get()
  const { id } = tx
    .insert(shelfPlaces)
    .values({ ...input, walkOrder: (last?.last ?? 0) + 1 })
    .returning()
    .get()
  return { subject: theShop, result: { id } }
})

/** Enters days the shop is closed; a day already there takes the new name. */
export const closeOn = verb(
  'shop.closeOn',
  (tx, input: { days: readonly { onDate: string; name: string }[] }) => {
    for (const day of input.days)
      tx.insert(holidays)
        .values(day)
        .onConflictDoUpdate({ target: holidays.onDate, set: { name: day.name } })
        .run()
    return { subject: theShop, result: { days: input.days.length } }
  },
)

/** Opens the shop after all on a day entered as closed. */
export const openOn = verb('shop.openOn', (tx, input: { onDate: string }) => {
  tx.delete(holidays).where(eq(holidays.onDate, input.onDate)).run()
  return { subject: theShop, result: { onDate: input.onDate } }
})
