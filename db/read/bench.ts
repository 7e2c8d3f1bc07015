import { and, asc, eq, inArray, isNull, sql } from 'drizzle-orm'
import { benchCapacity } from '../../core/bench/capacity.ts'
import { beforeInQueue } from '../../core/bench/queue.ts'
import { isOverdue } from '../../core/calendar/due.ts'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { cautionsFor } from '../../core/cautions/cautions.ts'
import { isForgotten } from '../../core/labour/forgotten.ts'
import { entryMinutes, totalMinutes } from '../../core/labour/minutes.ts'
import { isLate } from '../../core/standing/counter-list.ts'
import { type Stage, stages } from '../../core/standing/stages.ts'
import type { Read } from '../file/ledger.ts'
import { among } from '../rows/among.ts'
import { readSettings } from '../rows/settings.ts'
import { type RepairRow, standingsOf } from '../rules/facts.ts'
import { inShop } from '../rules/in-shop.ts'
import * as s from '../schema/index.ts'
import { agreedMinutesOf } from './agreed-hours.ts'

const atTheBench = ['go-ahead', 'on-the-bench', 'waiting', 'taken-in'] as const satisfies readonly Stage[]

/** When the last word of each repair's owner came. */
const lastWords = (read: Read, ids: readonly number[]): ReadonlyMap<number, string> =>
  new Map(
    read
      .select({ repairId: s.goAheads.repairId, at: s.goAheads.at })
      .from(s.goAheads)
      .where(among(s.goAheads.repairId, ids))
      .orderBy(asc(s.goAheads.id))
      .all()
      .map(({ repairId, at }) => [repairId, at]),
  )

/** The labour entries on each of these repairs. */
const labourOn = (read: Read, ids: readonly number[]) =>
  Map.groupBy(
    read.select().from(s.labourEntries).where(among(s.labourEntries.repairId, ids)).all(),
    entry => entry.repairId,
  )

/** What the queue's lines need besides the repair itself, asked once for all of them. */
function besides(read: Read, repairs: readonly RepairRow[], at: string) {
  const ids = repairs.map(({ id }) => id)
  const waiting = repairs.filter(({ stage }) => stage === 'waiting')
  const [agreed, labour] = [agreedMinutesOf(read, ids), labourOn(read, ids)]
  const [words, standings] = [lastWords(read, ids), standingsOf(read, waiting)]
  return ({ id }: RepairRow) => {
    const agreedMinutes = agreed.get(id) ?? null
    const workedMinutes = totalMinutes(labour.get(id) ?? [], at)
    return {
      waitingFor: standings.get(id)?.waitingFor ?? null,
      goAheadAt: words.get(id) ?? null,
      agreedMinutes,
      workedMinutes,
      aheadMinutes: Math.max(0, (agreedMinutes ?? 0) - workedMinutes),
    }
  }
}

function queueRows(read: Read, at: string, timeZone: string) {
  const today = civilDateOf(at, timeZone)
  const rows = read
    .select({ repair: s.repairs, owner: { id: s.owners.id, name: s.owners.name }, clock: s.clocks })
    .from(s.repairs)
    .innerJoin(s.owners, eq(s.owners.id, s.repairs.ownerId))
    .innerJoin(s.clocks, eq(s.clocks.id, s.repairs.clockId))
    .where(and(inShop, inArray(s.repairs.stage, [...atTheBench])))
    .all()
  const more = besides(
    read,
    rows.map(({ repair }) => repair),
    at,
  )
  return rows
    .map(({ repair, owner, clock }) => ({
      id: repair.id,
      number: repair.number,
      owner,
      clock,
      cautions: cautionsFor(clock),
      fault: repair.fault,
      springs: repair.springs,
      stage: repair.stage,
      notches: stages[repair.stage].notches,
      comeback: repair.comebackOfId !== null,
      covered: repair.covered,
      benchOrder: repair.benchOrder,
      estimatedOn: repair.estimatedOn,
      late: isLate(repair, today),
      ...more(repair),
    }))
    .sort(beforeInQueue)
}

/** Every labour clock that runs, with whose it is and on what; one left from another day is forgotten. */
export const runningLabour = (read: Read, at: string, timeZone: string) =>
  read
    .select({ entry: s.labourEntries, person: s.people.name, number: s.repairs.number })
    .from(s.labourEntries)
    .innerJoin(s.repairs, eq(s.repairs.id, s.labourEntries.repairId))
    .leftJoin(s.people, eq(s.people.id, s.labourEntries.personId))
    .where(sql`${s.labourEntries.endedAt} IS NULL AND ${s.labourEntries.struckReason} IS NULL`)
    .orderBy(asc(s.labourEntries.startedAt))
    .all()
    .map(({ entry, person, number }) => ({
      ...entry,
      person,
      number,
      minutes: entryMinutes(entry, at),
      forgotten: isForgotten(entry, at, timeZone),
    }))

/** Outside work that is away, the longest due first. */
export const outsideAway = (read: Read, today: string) =>
  read
    .select({ work: s.outsideWork, vendor: s.vendors.name, number: s.repairs.number })
    .from(s.outsideWork)
    .innerJoin(s.vendors, eq(s.vendors.id, s.outsideWork.vendorId))
    .innerJoin(s.repairs, eq(s.repairs.id, s.outsideWork.repairId))
    .where(isNull(s.outsideWork.backAt))
    .orderBy(sql`${s.outsideWork.dueOn} IS NULL, ${s.outsideWork.dueOn}, ${s.outsideWork.id}`)
    .all()
    .map(({ work, vendor, number }) => ({
      ...work,
      vendor,
      number,
      overdue: isOverdue(work.dueOn, today),
    }))

/** How many people work here now. */
export const activePeople = (read: Read): number =>
  read.select({ id: s.people.id }).from(s.people).where(eq(s.people.active, true)).all().length

/** The bench: the queue in order, what is still to be looked over, whose clocks run, what is away, and how many hours lie ahead. */
export function benchView(read: Read, at: string) {
  const settings = readSettings(read)
  const { timeZone } = settings.place
  const today = civilDateOf(at, timeZone)
  const rows = queueRows(read, at, timeZone)
  const queue = rows.filter(row => row.stage !== 'taken-in')
  return {
    today,
    at,
    queue,
    toAssess: rows.filter(row => row.stage === 'taken-in'),
    running: runningLabour(read, at, timeZone),
    away: outsideAway(read, today),
    capacity: benchCapacity(
      queue.map(row => row.aheadMinutes),
      settings.hours.week,
      activePeople(read),
    ),
  }
}
