import { and, asc, eq, isNull } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { whereabouts, whereBelongingIs, whereClockIs } from '../../core/custody/custody.ts'
import type { Read } from '../file/ledger.ts'
import { readSettings } from '../rows/settings.ts'
import { clockInShort } from '../rules/clock-words.ts'
import { inShop } from '../rules/in-shop.ts'
import * as s from '../schema/index.ts'
import { outsideAway } from './bench.ts'

/** The clocks in the shop with their owners, and the shelf place of those that run in. */
const clocksHere = (read: Read) =>
  read
    .select({
      number: s.repairs.number,
      stage: s.repairs.stage,
      owner: s.owners.name,
      clock: clockInShort,
      place: s.shelfPlaces.name,
    })
    .from(s.repairs)
    .innerJoin(s.owners, eq(s.owners.id, s.repairs.ownerId))
    .innerJoin(s.clocks, eq(s.clocks.id, s.repairs.clockId))
    .leftJoin(s.runInRuns, and(eq(s.runInRuns.repairId, s.repairs.id), isNull(s.runInRuns.endedAt)))
    .leftJoin(s.shelfPlaces, eq(s.shelfPlaces.id, s.runInRuns.placeId))
    .where(inShop)
    .orderBy(asc(s.repairs.number))
    .all()
    .map(row => ({
      kind: 'clock' as const,
      key: `clock ${row.number}`,
      ...row,
      where: whereClockIs(row.stage),
    }))

/** Everything that came with the clocks in the shop, or stayed with their owners. */
const belongingsHere = (read: Read) =>
  read
    .select({
      id: s.belongings.id,
      number: s.repairs.number,
      owner: s.owners.name,
      item: s.belongings.item,
      position: s.belongings.position,
      description: s.belongings.description,
      count: s.belongings.count,
      tag: s.belongings.tag,
      custody: s.belongings.custody,
      returnedAt: s.belongings.returnedAt,
    })
    .from(s.repairs)
    .innerJoin(s.belongings, eq(s.belongings.repairId, s.repairs.id))
    .innerJoin(s.owners, eq(s.owners.id, s.repairs.ownerId))
    .where(inShop)
    .orderBy(asc(s.repairs.number), asc(s.belongings.id))
    .all()
    .flatMap(({ custody, returnedAt, ...row }) => {
      const where = whereBelongingIs(custody, returnedAt)
      return where === null ? [] : [{ kind: 'belonging' as const, key: `belonging ${row.id}`, ...row, where }]
    })

/** What is away for outside work. */
const awayNow = (read: Read, today: string) =>
  outsideAway(read, today).map(({ id, number, vendor, description, dueOn, overdue }) => ({
    kind: 'outside' as const,
    key: `outside ${id}`,
    where: 'vendor' as const,
    number,
    vendor,
    description,
    dueOn,
    overdue,
  }))

/** Where every clock in the shop, every separable part of one, and everything sent out is right now. */
export function custodyView(read: Read, at: string) {
  const today = civilDateOf(at, readSettings(read).place.timeZone)
  const things = [...clocksHere(read), ...belongingsHere(read), ...awayNow(read, today)]
  return {
    today,
    groups: whereabouts.map(where => ({ where, things: things.filter(thing => thing.where === where) })),
  }
}
