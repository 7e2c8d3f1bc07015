import { and, asc, eq, inArray, isNull, ne, sql } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { type Minor, minor } from '../../core/money/minor.ts'
import { counterGroup, isLate, isUncollected } from '../../core/standing/counter-list.ts'
import { stages } from '../../core/standing/standing.ts'
import { repairBalance } from '../balance.ts'
import { standingOf } from '../facts.ts'
import type { Read } from '../ledger.ts'
import { belongings, clocks, documents, estimates, owners, repairs } from '../schema/index.ts'
import { readSettings } from '../settings.ts'
import { clockInShort } from './clock-words.ts'

function lastEstimate(read: Read, repairId: number) {
  const row = read
    .select({
      version: estimates.version,
      totalMinor: estimates.totalMinor,
      sentAt: estimates.sentAt,
      validUntil: estimates.validUntil,
    })
    .from(estimates)
    .where(eq(estimates.repairId, repairId))
    .orderBy(sql`${estimates.version} DESC`)
    .limit(1)
    .get()
  return row ?? null
}

const isInvoiced = (read: Read, repairId: number): boolean =>
  read
    .select({ id: documents.id })
    .from(documents)
    .where(and(eq(documents.repairId, repairId), eq(documents.kind, 'invoice')))
    .limit(1)
    .get() !== undefined

const receivedBelongings = (read: Read, repairId: number) =>
  read
    .select({
      item: belongings.item,
      position: belongings.position,
      count: belongings.count,
      tag: belongings.tag,
    })
    .from(belongings)
    .where(
      and(
        eq(belongings.repairId, repairId),
        eq(belongings.custody, 'received'),
        isNull(belongings.returnedAt),
      ),
    )
    .all()

/** What the owner will have to pay: what is due on the invoice, or else what the last estimate comes to less what is paid. */
function toPay(read: Read, repairId: number, estimated: Minor | null) {
  const { due, paid } = repairBalance(read, repairId)
  return isInvoiced(read, repairId) || estimated === null ? due : minor(estimated - paid)
}

/** Everything in the shop, grouped as the counter reads it, with what is to be collected summed up. */
export function counterView(read: Read, at: string) {
  const settings = readSettings(read)
  const { timeZone } = settings.place
  const today = civilDateOf(at, timeZone)
  const rows = read
    .select({ repair: repairs, owner: { id: owners.id, name: owners.name }, clock: clockInShort })
    .from(repairs)
    .innerJoin(owners, eq(owners.id, repairs.ownerId))
    .innerJoin(clocks, eq(clocks.id, repairs.clockId))
    .where(ne(repairs.stage, 'collected'))
    .orderBy(asc(repairs.stageSince), asc(repairs.id))
    .all()
    .map(({ repair, owner, clock }) => {
      const { stage, estimatedOn, covered } = repair
      const waitingFor = stage === 'waiting' ? standingOf(read, repair).waitingFor : null
      const facts = { stage, comeback: repair.comebackOfId !== null, covered, waitingFor, estimatedOn }
      const estimate = lastEstimate(read, repair.id)
      const sinceOn = civilDateOf(repair.stageSince, timeZone)
      return {
        id: repair.id,
        number: repair.number,
        owner,
        clock,
        fault: repair.fault,
        group: counterGroup(facts, today),
        stage,
        notches: stages[stage].notches,
        waitingFor,
        covered,
        sinceOn,
        estimatedOn,
        late: isLate(facts, today),
        uncollected: isUncollected(stage, sinceOn, today, settings.collection.uncollectedDays),
        toldAt: repair.toldAt,
        estimate,
        belongings: receivedBelongings(read, repair.id),
        toPayMinor: toPay(read, repair.id, estimate?.totalMinor ?? null),
      }
    })
  const collectable = rows.filter(row => row.group === 'to-collect')
  return {
    today,
    rows,
    toCollectMinor: minor(collectable.reduce((sum, row) => sum + Math.max(row.toPayMinor, 0), 0)),
    counts: {
      toCollect: collectable.length,
      awaitingWord: rows.filter(row => row.group === 'awaiting-word').length,
      late: rows.filter(row => row.late).length,
    },
  }
}

/** The documents of some repairs by kind, newest first. */
export const documentsOf = (read: Read, repairIds: readonly number[]) =>
  read
    .select({
      id: documents.id,
      kind: documents.kind,
      number: documents.number,
      issuedOn: documents.issuedOn,
      totalMinor: documents.totalMinor,
      repairId: documents.repairId,
    })
    .from(documents)
    .where(inArray(documents.repairId, [...repairIds]))
    .orderBy(asc(documents.id))
    .all()
