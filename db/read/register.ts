import { and, asc, desc, eq, gt, isNull, or, sql } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { Read } from '../ledger.ts'
import { known } from '../refusal.ts'
import * as s from '../schema/index.ts'
import { readSettings } from '../settings.ts'
import { coverOf } from '../warranty-cover.ts'
import { clockInShort } from './clock-words.ts'
import { documentsOf } from './counter.ts'
import { ownerWithContacts } from './repair.ts'

/** Where a list of owners goes on: after this name and number. */
export interface After {
  readonly name: string
  readonly id: number
}

const page = 100

/** Owners by name, a page at a time, with what each has on record. */
export function ownersView(read: Read, after: After | null) {
  const from = after
    ? or(
        sql`${s.owners.name} COLLATE NOCASE > ${after.name} COLLATE NOCASE`,
        and(sql`${s.owners.name} = ${after.name} COLLATE NOCASE`, gt(s.owners.id, after.id)),
      )
    : undefined
  const rows = read
    .select({
      id: s.owners.id,
      name: s.owners.name,
      address: s.owners.address,
      clocks: sql<number>`(SELECT count(*) FROM clock_owners co WHERE co.owner_id = ${s.owners.id} AND co.until_at IS NULL)`,
      repairs: sql<number>`(SELECT count(*) FROM repairs r WHERE r.owner_id = ${s.owners.id})`,
      lastAt: sql<
        string | null
      >`(SELECT max(r.taken_in_at) FROM repairs r WHERE r.owner_id = ${s.owners.id})`,
    })
    .from(s.owners)
    .where(and(isNull(s.owners.mergedIntoId), from))
    .orderBy(sql`${s.owners.name} COLLATE NOCASE`, asc(s.owners.id))
    .limit(page + 1)
    .all()
  return { rows: rows.slice(0, page), more: rows.length > page }
}

const repairsInShort = (read: Read, where: ReturnType<typeof eq>) =>
  read
    .select({
      id: s.repairs.id,
      number: s.repairs.number,
      takenInAt: s.repairs.takenInAt,
      fault: s.repairs.fault,
      stage: s.repairs.stage,
      comebackOfId: s.repairs.comebackOfId,
      covered: s.repairs.covered,
      clock: clockInShort,
    })
    .from(s.repairs)
    .innerJoin(s.clocks, eq(s.clocks.id, s.repairs.clockId))
    .where(where)
    .orderBy(desc(s.repairs.id))
    .all()

/** The clocks an owner has now. */
export const clocksOfOwner = (read: Read, ownerId: number) =>
  read
    .select({ ...clockInShort, since: s.clockOwners.fromAt })
    .from(s.clockOwners)
    .innerJoin(s.clocks, eq(s.clocks.id, s.clockOwners.clockId))
    .where(and(eq(s.clockOwners.ownerId, ownerId), isNull(s.clockOwners.untilAt)))
    .orderBy(desc(s.clocks.id))
    .all()

/** An owner with contacts, clocks and every repair. */
export function ownerView(read: Read, id: number) {
  return {
    owner: ownerWithContacts(read, id),
    clocks: clocksOfOwner(read, id),
    repairs: repairsInShort(read, eq(s.repairs.ownerId, id)),
  }
}

/** A clock with its owners over time and its whole history: every visit, what it was, what was done, and its warranty today. */
export function clockView(read: Read, id: number, at: string) {
  const today = civilDateOf(at, readSettings(read).place.timeZone)
  const clock = known(
    read.select().from(s.clocks).where(eq(s.clocks.id, id)).get(),
    'clock.unknown',
    'clockId',
  )
  const ownersOverTime = read
    .select({
      ownerId: s.owners.id,
      name: s.owners.name,
      fromAt: s.clockOwners.fromAt,
      untilAt: s.clockOwners.untilAt,
    })
    .from(s.clockOwners)
    .innerJoin(s.owners, eq(s.owners.id, s.clockOwners.ownerId))
    .where(eq(s.clockOwners.clockId, id))
    .orderBy(desc(s.clockOwners.id))
    .all()
  const rows = read
    .select()
    .from(s.repairs)
    .where(eq(s.repairs.clockId, id))
    .orderBy(desc(s.repairs.id))
    .all()
  const papers = documentsOf(
    read,
    rows.map(row => row.id),
  )
  return {
    clock,
    owners: ownersOverTime,
    visits: rows.map(repair => ({
      repair,
      cover: coverOf(read, repair, today) ?? null,
      findings: read.select().from(s.findings).where(eq(s.findings.repairId, repair.id)).all(),
      parts: partsOf(read, repair.id),
      documents: papers.filter(paper => paper.repairId === repair.id),
    })),
  }
}

const partsOf = (read: Read, repairId: number) =>
  read
    .select({ name: s.parts.name, kind: s.parts.kind, used: sql<number>`-sum(${s.stockMoves.quantity})` })
    .from(s.stockMoves)
    .innerJoin(s.parts, eq(s.parts.id, s.stockMoves.partId))
    .where(eq(s.stockMoves.repairId, repairId))
    .groupBy(s.parts.id)
    .having(sql`sum(${s.stockMoves.quantity}) <> 0`)
    .all()
