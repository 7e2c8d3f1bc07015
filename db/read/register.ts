import { and, asc, desc, eq, isNotNull, isNull, type SQL, sql } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { cautionsFor } from '../../core/cautions/cautions.ts'
import { minor } from '../../core/money/minor.ts'
import { isInShop } from '../../core/standing/stages.ts'
import type { Read } from '../file/ledger.ts'
import { known } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { repairBalance } from '../rules/balance.ts'
import { clockInShort } from '../rules/clock-words.ts'
import { coverOf, warrantyOf } from '../rules/warranty-cover.ts'
import * as s from '../schema/index.ts'
import { documentsOf } from './counter.ts'
import { contactShown, ownerWithContacts } from './repair.ts'
import { pageLines } from './turn.ts'

/** A line in the list of owners by name. */
export interface OwnerLine {
  readonly name: string
  readonly id: number
}

/** Which page of the owners: those after a line, or those before it; the first when both are null. */
export interface OwnersTurn {
  readonly after: OwnerLine | null
  readonly before: OwnerLine | null
}

const byName = sql`${s.owners.name} COLLATE NOCASE`

// The range on the name comes first, by itself: so the index is entered at the line instead of read from its end.
const afterLine = ({ name, id }: OwnerLine) =>
  sql`${byName} >= ${name} AND (${byName} > ${name} OR ${s.owners.id} > ${id})`

const beforeLine = ({ name, id }: OwnerLine) =>
  sql`${byName} <= ${name} AND (${byName} < ${name} OR ${s.owners.id} < ${id})`

function ownersPage(read: Read, where: SQL | undefined, backwards: boolean, limit: number) {
  const order = backwards ? [sql`${byName} DESC`, desc(s.owners.id)] : [byName, asc(s.owners.id)]
  return read
    .select({
      id: s.owners.id,
      name: s.owners.name,
      address: s.owners.address,
      // The table is named here: drizzle leaves it out of a select from one table, and inside the brackets `id` is another's.
      clocks: sql<number>`(SELECT count(*) FROM clock_owners co WHERE co.owner_id = owners.id AND co.until_at IS NULL)`,
      repairs: sql<number>`(SELECT count(*) FROM repairs r WHERE r.owner_id = owners.id)`,
      lastAt: sql<string | null>`(SELECT max(r.taken_in_at) FROM repairs r WHERE r.owner_id = owners.id)`,
    })
    .from(s.owners)
    .where(and(isNull(s.owners.mergedIntoId), where))
    .orderBy(...order)
    .limit(limit)
    .all()
}

/** Owners by name, a page at a time, with what each has on record. */
export function ownersView(read: Read, { after, before }: OwnersTurn) {
  const where = after ? afterLine(after) : before ? beforeLine(before) : undefined
  const backwards = !after && before !== null
  const found = ownersPage(read, where, backwards, pageLines)
  const rows = backwards ? found.toReversed() : found
  const [first, last] = [rows.at(0), rows.at(-1)]
  return {
    rows,
    previous: first !== undefined && ownersPage(read, beforeLine(first), true, 1).length > 0,
    next: last !== undefined && ownersPage(read, afterLine(last), false, 1).length > 0,
  }
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

const struckContacts = (read: Read, ownerId: number) =>
  read
    .select()
    .from(s.ownerContacts)
    .where(and(eq(s.ownerContacts.ownerId, ownerId), isNotNull(s.ownerContacts.struckReason)))
    .all()
    .map(contactShown)

/** The owner a duplicate was merged into, if it was. */
const mergedInto = (read: Read, id: number | null) =>
  id === null
    ? null
    : (read
        .select({ id: s.owners.id, name: s.owners.name })
        .from(s.owners)
        .where(eq(s.owners.id, id))
        .get() ?? null)

/** An owner with contacts, clocks, every repair, and what is due on them (minus what the shop holds). */
export function ownerView(read: Read, id: number) {
  const owner = ownerWithContacts(read, id)
  const repairs = repairsInShort(read, eq(s.repairs.ownerId, id))
  const dues = repairs.map(repair => repairBalance(read, repair.id).due)
  return {
    owner,
    mergedInto: mergedInto(read, owner.mergedIntoId),
    struckContacts: struckContacts(read, id),
    clocks: clocksOfOwner(read, id),
    repairs,
    dueMinor: minor(dues.reduce((sum, due) => sum + due, 0)),
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
    cautions: cautionsFor(clock),
    owners: ownersOverTime,
    inShop: rows.find(row => isInShop(row.stage))?.number ?? null,
    visits: rows.map(repair => ({
      repair,
      warranty: warrantyOf(read, repair.id) ?? null,
      cover: coverOf(read, repair, today) ?? null,
      comebackOf: rows.find(row => row.id === repair.comebackOfId)?.number ?? null,
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
