import { asc, eq, isNotNull, sql } from 'drizzle-orm'
import { isCredited } from '../../core/accounts/credit.ts'
import type { CreditNoteContents, InvoiceContents } from '../../core/papers/contents.ts'
import type { Read } from '../file/ledger.ts'
import { accountHeld } from '../rules/balance.ts'
import { documentRow, frozenContents } from '../rules/frozen-papers.ts'
import { closedPeriods, documents, drawerCounts, owners, payments } from '../schema/index.ts'
import { type Check, type Fault, fault } from './check.ts'

/** Credit notes of each invoice: never more than it, and its last cent only with the last of its lines. */
function* creditFaults(read: Read): Generator<Fault, number> {
  const notes = read
    .select({ invoiceId: documents.correctsId, contents: documents.contents })
    .from(documents)
    .where(isNotNull(documents.correctsId))
    .orderBy(asc(documents.id))
    .all()
  const byInvoice = Map.groupBy(notes, note => note.invoiceId as number)
  for (const [id, own] of byInvoice) {
    const row = documentRow(read, id)
    const invoice = frozenContents(row) as InvoiceContents
    const credits = own.map(note => frozenContents(note) as CreditNoteContents)
    const left = credits.reduce<number>((sum, { priced }) => sum + priced.taxInclusive, row.totalMinor)
    if (left * Math.sign(row.totalMinor) < 0 || (left === 0) !== isCredited(invoice, credits))
      yield fault('money.credited', { number: row.number, left })
  }
  return byInvoice.size
}

/** Owners' accounts: the shop never holds less than nothing on one. */
function* accountFaults(read: Read): Generator<Fault, number> {
  const ids = read
    .selectDistinct({ id: payments.ownerId, name: owners.name })
    .from(payments)
    .innerJoin(owners, eq(owners.id, payments.ownerId))
    .where(
      sql`(${payments.method} = 'account' OR ${payments.repairId} IS NULL) AND ${owners.mergedIntoId} IS NULL`,
    )
    .all()
  for (const { id, name } of ids) {
    const held = accountHeld(read, id)
    if (held < 0) yield fault('money.account', { name, held })
  }
  return ids.length
}

/** Counts of the drawer: each against what the one before left and the cash entered between them. */
function* drawerFaults(read: Read): Generator<Fault, number> {
  const counts = read.select().from(drawerCounts).orderBy(asc(drawerCounts.id)).all()
  const cash = (from: number, to: number) =>
    read
      .select({ sum: sql<number>`ifnull(sum(${payments.amountMinor}), 0)` })
      .from(payments)
      .where(sql`${payments.method} = 'cash' AND ${payments.id} > ${from} AND ${payments.id} <= ${to}`)
      .get()?.sum ?? 0
  for (const [i, count] of counts.entries()) {
    const before = counts[i - 1]
    const left = before ? before.countedMinor - before.takenMinor : 0
    const expected = left + cash(before?.lastPaymentId ?? 0, count.lastPaymentId)
    if (count.expectedMinor !== expected)
      yield fault('money.drawer', { day: count.onDate, kept: count.expectedMinor, expected })
  }
  return counts.length
}

/** Closed periods, each later than the one before; and nothing of the money booked into one after it was closed. */
function* periodFaults(read: Read): Generator<Fault, number> {
  const periods = read.select().from(closedPeriods).orderBy(asc(closedPeriods.id)).all()
  for (const { at, toDate } of periods) {
    const late = read.get<{ n: number }>(sql`
      SELECT (SELECT count(*) FROM payments WHERE at > ${at} AND on_date <= ${toDate})
        + (SELECT count(*) FROM write_offs WHERE at > ${at} AND on_date <= ${toDate})
        + (SELECT count(*) FROM drawer_counts WHERE at > ${at} AND on_date <= ${toDate})
        + (SELECT count(*) FROM documents WHERE kind IN ('invoice', 'credit-note') AND issued_at > ${at} AND issued_on <= ${toDate})
        AS n`)
    if (late.n > 0) yield fault('money.closed', { to: toDate, entries: late.n })
  }
  return periods.length
}

/** What the acts of money leave behind: credits within their invoices, accounts, counts of the drawer, closed periods. */
export const money: Check = function* ({ read }) {
  return (
    (yield* creditFaults(read)) +
    (yield* accountFaults(read)) +
    (yield* drawerFaults(read)) +
    (yield* periodFaults(read))
  )
}
