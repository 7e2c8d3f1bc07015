import { and, asc, eq, inArray, isNotNull, notInArray, sql } from 'drizzle-orm'
import type { CalendarDay } from '../../core/calendar/icalendar.ts'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { CalendarFactKind } from '../../core/words/en/bench.ts'
import { inShop } from '../in-shop.ts'
import type { Read } from '../ledger.ts'
import * as s from '../schema/index.ts'
import { readSettings } from '../settings.ts'
import { outsideAway, runningLabour } from './bench.ts'
import { clockInShort } from './clock-words.ts'
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
  const inHand = repairsAt(read, ['go-ahead', 'on-the-bench', 'waiting', 'running-in'])
  return {
    today,
    round: rows.filter(row => row.due.wind || row.due.reading),
    mayPass: rows.filter(row => row.verdict.code === 'mayPass'),
    toOrder: parts.filter(part => part.toOrder),
    ordersLate: orders.filter(order => order.overdue || order.dueOn === today),
    outsideLate: outsideAway(read, today).filter(work => work.overdue || work.dueOn === today),
    forgotten: runningLabour(read, at, timeZone).filter(entry => entry.forgotten),
    toEstimate: repairsAt(read, ['taken-in']),
    late: inHand.filter(repair => repair.estimatedOn !== null && repair.estimatedOn <= today),
    toCollect: repairsAt(read, ['ready', 'declined']),
  }
}

/** What a calendar entry speaks of; its words are the catalogue's. */
export interface CalendarFact extends Omit<CalendarDay, 'summary'> {
  readonly kind: CalendarFactKind
  readonly number: number | null
  readonly what: string
}

/** Estimated dates, the ends of run-ins, outside work and orders due: everything ahead that has a day. */
export function calendarFacts(read: Read): CalendarFact[] {
  return [...estimatedDates(read), ...runInEnds(read), ...outsideDue(read), ...ordersDue(read)]
}

const estimatedDates = (read: Read): CalendarFact[] =>
  read
    .select({ number: s.repairs.number, onDate: s.repairs.estimatedOn, what: s.owners.name })
    .from(s.repairs)
    .innerJoin(s.owners, eq(s.owners.id, s.repairs.ownerId))
    .where(
      and(notInArray(s.repairs.stage, ['ready', 'declined', 'collected']), isNotNull(s.repairs.estimatedOn)),
    )
    .orderBy(asc(s.repairs.number))
    .all()
    .map(row => ({ ...row, kind: 'estimated', uid: `estimated-${row.number}`, onDate: row.onDate ?? '' }))

const runInEnds = (read: Read): CalendarFact[] =>
  read
    .select({ number: s.repairs.number, onDate: s.runInRuns.readyOn, what: s.owners.name })
    .from(s.runInRuns)
    .innerJoin(s.repairs, eq(s.repairs.id, s.runInRuns.repairId))
    .innerJoin(s.owners, eq(s.owners.id, s.repairs.ownerId))
    .where(sql`${s.runInRuns.endedAt} IS NULL`)
    .orderBy(asc(s.repairs.number))
    .all()
    .map(row => ({ ...row, kind: 'runInEnds', uid: `run-in-${row.number}` }))

const outsideDue = (read: Read): CalendarFact[] =>
  outsideAway(read, '').flatMap(({ id, dueOn, number, vendor }) =>
    dueOn === null ? [] : [{ kind: 'outsideDue', uid: `outside-${id}`, onDate: dueOn, number, what: vendor }],
  )

const ordersDue = (read: Read): CalendarFact[] =>
  read
    .select({ id: s.partOrders.id, onDate: s.partOrders.dueOn, what: s.parts.name })
    .from(s.partOrders)
    .innerJoin(s.parts, eq(s.parts.id, s.partOrders.partId))
    .where(sql`${s.partOrders.arrivedAt} IS NULL AND ${s.partOrders.dueOn} IS NOT NULL`)
    .orderBy(asc(s.partOrders.id))
    .all()
    .map(({ id, onDate, what }) => ({
      kind: 'orderDue',
      uid: `order-${id}`,
      onDate: onDate ?? '',
      number: null,
      what,
    }))
