import { and, asc, eq, inArray } from 'drizzle-orm'
import { isDue } from '../../core/calendar/due.ts'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { awaitsWord, isInWork, stagesThat } from '../../core/standing/stages.ts'
import type { Read } from '../file/ledger.ts'
import { readSettings } from '../rows/settings.ts'
import { clockInShort } from '../rules/clock-words.ts'
import { inShop } from '../rules/in-shop.ts'
import * as s from '../schema/index.ts'
import { outsideAway, runningLabour } from './bench.ts'
import { counterView } from './counter.ts'
import { shelfView } from './shelf.ts'
import { storesView } from './stores.ts'

/** Repairs of some stages with owner and clock in short. */
const repairsAt = (read: Read, stages: readonly (typeof s.repairs.$inferSelect)['stage'][]) =>
  read
    .select({
      number: s.repairs.number,
      stage: s.repairs.stage,
      stageSince: s.repairs.stageSince,
      toldAt: s.repairs.toldAt,
      estimatedOn: s.repairs.estimatedOn,
      owner: s.owners.name,
      clock: clockInShort,
    })
    .from(s.repairs)
    .innerJoin(s.owners, eq(s.owners.id, s.repairs.ownerId))
    .innerJoin(s.clocks, eq(s.clocks.id, s.repairs.clockId))
    .where(and(inShop, inArray(s.repairs.stage, [...stages])))
    .orderBy(asc(s.repairs.stageSince), asc(s.repairs.id))
    .all()

/** The turn of the day: what to wind and read, order and chase, estimate and hand over today. */
export function todayView(read: Read, at: string) {
  const { timeZone } = readSettings(read).place
  const today = civilDateOf(at, timeZone)
  const { rows } = shelfView(read, at)
  const { parts, orders } = storesView(read, at)
  const inShopToday = counterView(read, at).rows
  const inWork = repairsAt(read, stagesThat(isInWork))
  return {
    today,
    round: rows.filter(row => row.due.wind || row.due.reading),
    toDecide: rows.filter(row => row.verdict !== 'not-yet'),
    toOrder: parts.filter(part => part.toOrder),
    ordersLate: orders.filter(order => isDue(order.dueOn, today)),
    outsideLate: outsideAway(read, today).filter(work => isDue(work.dueOn, today)),
    forgotten: runningLabour(read, at, timeZone).filter(entry => entry.forgotten),
    toEstimate: repairsAt(read, ['taken-in']),
    toSend: inShopToday.filter(row => row.toSend),
    partsIn: inShopToday.filter(row => row.partsIn),
    toAsk: inShopToday.filter(row => awaitsWord(row) && row.sinceOn < today),
    late: inWork.filter(repair => isDue(repair.estimatedOn, today)),
    toCollect: inShopToday.filter(row => row.group === 'to-collect'),
  }
}
