import { and, asc, eq, gte, lte, sql } from 'drizzle-orm'
import { dayBegins, dayEnds } from '../../core/calendar/zone.ts'
import { entryMinutes } from '../../core/labour/minutes.ts'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { Stretch } from '../../core/reports/turn-round.ts'
import type { Read } from '../file/ledger.ts'
import { among } from '../rows/among.ts'
import * as s from '../schema/index.ts'

/** The repairs handed over from one day to another, both included. */
export const handedOver = (read: Read, from: string, to: string, timeZone: string) =>
  read
    .select({
      id: s.repairs.id,
      scope: s.repairs.scope,
      form: s.clocks.form,
      takenInAt: s.repairs.takenInAt,
      readyAt: s.repairs.readyAt,
      collectedAt: s.handOvers.at,
    })
    .from(s.handOvers)
    .innerJoin(s.repairs, eq(s.repairs.id, s.handOvers.repairId))
    .innerJoin(s.clocks, eq(s.clocks.id, s.repairs.clockId))
    .where(and(gte(s.handOvers.at, dayBegins(from, timeZone)), lte(s.handOvers.at, dayEnds(to, timeZone))))
    .orderBy(asc(s.handOvers.at), asc(s.repairs.id))
    .all()

export type HandedOver = ReturnType<typeof handedOver>[number]

/** Minutes worked on each of these repairs, by who worked them. */
export function workedOn(read: Read, ids: readonly number[], at: string) {
  const people = new Map<number, Map<number | null, number>>()
  const entries = read.select().from(s.labourEntries).where(among(s.labourEntries.repairId, ids)).all()
  for (const entry of entries) {
    const minutes = entryMinutes(entry, at)
    const worked = people.get(entry.repairId) ?? new Map<number | null, number>()
    people.set(entry.repairId, worked.set(entry.personId, (worked.get(entry.personId) ?? 0) + minutes))
  }
  return (id: number) => [...(people.get(id) ?? [])].map(([personId, minutes]) => ({ personId, minutes }))
}

export type Worked = ReturnType<ReturnType<typeof workedOn>>

/** Labour billed for each of these repairs without tax, less what was credited, from the frozen papers. */
export function labourBilled(
  read: Read,
  ids: readonly number[],
  currency: string,
): ReadonlyMap<number, Minor> {
  const rows = read.all<{ repairId: number; net: number }>(sql`
    SELECT d.repair_id AS repairId, sum(line.value ->> 'net') AS net
    FROM documents d, json_each(d.contents, '$.lines') line
    WHERE d.kind IN ('invoice', 'credit-note') AND d.currency = ${currency} AND line.value ->> 'kind' = 'labour'
      AND d.repair_id IN (SELECT value FROM json_each(${JSON.stringify(ids)}))
    GROUP BY d.repair_id`)
  return new Map(rows.map(({ repairId, net }) => [repairId, minor(net)]))
}

interface StretchRow extends Stretch {
  readonly repairId: number
}

const byRepair = (rows: readonly StretchRow[]) => {
  const groups = Map.groupBy(rows, row => row.repairId)
  return (id: number): readonly Stretch[] => groups.get(id) ?? []
}

/** Waits on record, outside work away, and findings until the owner's next word. */
export const waitsOf = (read: Read, ids: readonly number[]) => {
  const asked = sql`(SELECT value FROM json_each(${JSON.stringify(ids)}))`
  return byRepair(
    read.all<StretchRow>(sql`
      SELECT repair_id AS repairId, from_at AS "from", until_at AS "until" FROM waits WHERE repair_id IN ${asked}
      UNION ALL SELECT repair_id, sent_at, back_at FROM outside_work WHERE repair_id IN ${asked}
      UNION ALL SELECT f.repair_id, f.at,
        (SELECT min(g.at) FROM go_aheads g WHERE g.repair_id = f.repair_id AND g.at >= f.at)
      FROM findings f WHERE f.repair_id IN ${asked} AND f.needs_word = 1 AND f.struck_reason IS NULL`),
  )
}

/** Their run-ins. */
export const runsOf = (read: Read, ids: readonly number[]) =>
  byRepair(
    read
      .select({ repairId: s.runInRuns.repairId, from: s.runInRuns.startedAt, until: s.runInRuns.endedAt })
      .from(s.runInRuns)
      .where(among(s.runInRuns.repairId, ids))
      .all(),
  )

/** When the owner of each repair first allowed the work. */
export const firstWords = (read: Read, ids: readonly number[]) =>
  new Map(
    read
      .select({ repairId: s.goAheads.repairId, at: sql<string>`min(${s.goAheads.at})` })
      .from(s.goAheads)
      .where(and(among(s.goAheads.repairId, ids), eq(s.goAheads.answer, 'go-ahead')))
      .groupBy(s.goAheads.repairId)
      .all()
      .map(({ repairId, at }) => [repairId, at]),
  )

/** Those of the repairs whose clock came back for them. */
export const cameBack = (read: Read, ids: readonly number[]): ReadonlySet<number | null> =>
  new Set(
    read
      .select({ of: s.repairs.comebackOfId })
      .from(s.repairs)
      .where(among(s.repairs.comebackOfId, ids))
      .all()
      .map(({ of }) => of),
  )
