import { and, asc, between, desc, eq, gte, inArray, lt, lte, sql } from 'drizzle-orm'
import { minor } from '../../core/money/minor.ts'
import type { PaperKind } from '../../core/papers/contents.ts'
import type { Read } from '../ledger.ts'
import * as s from '../schema/index.ts'

const page = 100

const columns = {
  id: s.documents.id,
  kind: s.documents.kind,
  number: s.documents.number,
  issuedOn: s.documents.issuedOn,
  totalMinor: s.documents.totalMinor,
  taxMinor: s.documents.taxMinor,
  correctsId: s.documents.correctsId,
  owner: { id: s.owners.id, name: s.owners.name },
  repairNumber: s.repairs.number,
}

/** Papers, newest first, a page at a time; of one kind where asked. */
export function documentsView(read: Read, ask: { kind: PaperKind | null; before: number | null }) {
  const rows = read
    .select(columns)
    .from(s.documents)
    .innerJoin(s.owners, eq(s.owners.id, s.documents.ownerId))
    .leftJoin(s.repairs, eq(s.repairs.id, s.documents.repairId))
    .where(
      and(
        ask.kind ? eq(s.documents.kind, ask.kind) : undefined,
        ask.before === null ? undefined : lt(s.documents.id, ask.before),
      ),
    )
    .orderBy(desc(s.documents.id))
    .limit(page + 1)
    .all()
  return { rows: rows.slice(0, page), more: rows.length > page }
}

/** What is owed: every repair whose invoices and payments do not cancel out, oldest first. */
export function owedView(read: Read) {
  const rows = read
    .all<{
      repairId: number
      number: number
      ownerId: number
      name: string
      billed: number
      paid: number
      since: string
    }>(
      sql`
    SELECT r.id AS repairId, r.number, o.id AS ownerId, o.name, b.billed, ifnull(p.paid, 0) AS paid, b.since
    FROM (SELECT repair_id, sum(total_minor) AS billed, min(issued_on) AS since FROM documents
          WHERE kind IN ('invoice', 'credit-note') GROUP BY repair_id) b
    LEFT JOIN (SELECT repair_id, sum(amount_minor) AS paid FROM payments GROUP BY repair_id) p ON p.repair_id = b.repair_id
    JOIN repairs r ON r.id = b.repair_id JOIN owners o ON o.id = r.owner_id
    WHERE b.billed <> ifnull(p.paid, 0) ORDER BY b.since, r.id`,
    )
    .map(row => ({
      repairId: row.repairId,
      number: row.number,
      owner: { id: row.ownerId, name: row.name },
      billedMinor: minor(row.billed),
      paidMinor: minor(row.paid),
      dueMinor: minor(row.billed - row.paid),
      sinceOn: row.since,
    }))
  return { rows, dueMinor: minor(rows.reduce((sum, row) => sum + row.dueMinor, 0)) }
}

/** Tax by code and rate on invoices and credit notes issued from `from` to `to`, both days included. */
export function taxView(read: Read, from: string, to: string) {
  const rows = read
    .select({
      code: s.documentTaxes.code,
      rate: s.documentTaxes.rate,
      taxable: sql<number>`sum(${s.documentTaxes.taxableMinor})`,
      tax: sql<number>`sum(${s.documentTaxes.taxMinor})`,
    })
    .from(s.documentTaxes)
    .innerJoin(s.documents, eq(s.documents.id, s.documentTaxes.documentId))
    .where(
      and(between(s.documents.issuedOn, from, to), inArray(s.documents.kind, ['invoice', 'credit-note'])),
    )
    .groupBy(s.documentTaxes.code, s.documentTaxes.rate)
    .orderBy(asc(s.documentTaxes.code), asc(s.documentTaxes.rate))
    .all()
    .map(row => ({
      code: row.code,
      rate: row.rate,
      taxableMinor: minor(row.taxable),
      taxMinor: minor(row.tax),
    }))
  return {
    from,
    to,
    rows,
    taxableMinor: minor(rows.reduce((sum, row) => sum + row.taxableMinor, 0)),
    taxMinor: minor(rows.reduce((sum, row) => sum + row.taxMinor, 0)),
  }
}

/** Money in and out between two days, both included, in order. */
export function paymentsView(read: Read, from: string, to: string) {
  const rows = read
    .select({
      id: s.payments.id,
      onDate: s.payments.onDate,
      method: s.payments.method,
      amountMinor: s.payments.amountMinor,
      reference: s.payments.reference,
      receiptId: s.payments.receiptId,
      owner: { id: s.owners.id, name: s.owners.name },
      repairNumber: s.repairs.number,
    })
    .from(s.payments)
    .innerJoin(s.owners, eq(s.owners.id, s.payments.ownerId))
    .leftJoin(s.repairs, eq(s.repairs.id, s.payments.repairId))
    .where(and(gte(s.payments.onDate, from), lte(s.payments.onDate, to)))
    .orderBy(asc(s.payments.id))
    .all()
  return { from, to, rows, totalMinor: minor(rows.reduce((sum, row) => sum + row.amountMinor, 0)) }
}

/** The day book, newest first, a page at a time. */
export function dayBookView(read: Read, before: number | null) {
  const rows = read
    .select({
      id: s.dayBook.id,
      at: s.dayBook.at,
      act: s.dayBook.act,
      person: s.people.name,
      subjectKind: s.dayBook.subjectKind,
      subjectId: s.dayBook.subjectId,
      input: s.dayBook.input,
      repairNumber: s.repairs.number,
      documentNumber: s.documents.number,
      documentKind: s.documents.kind,
    })
    .from(s.dayBook)
    .leftJoin(s.people, eq(s.people.id, s.dayBook.personId))
    .leftJoin(s.repairs, and(eq(s.dayBook.subjectKind, 'repair'), eq(s.repairs.id, s.dayBook.subjectId)))
    .leftJoin(
      s.documents,
      and(eq(s.dayBook.subjectKind, 'document'), eq(s.documents.id, s.dayBook.subjectId)),
    )
    .where(before === null ? undefined : lt(s.dayBook.id, before))
    .orderBy(desc(s.dayBook.id))
    .limit(page + 1)
    .all()
  return { rows: rows.slice(0, page), more: rows.length > page }
}

/** The whole day book in order, as acts that can be played again. */
export const dayBookActs = (read: Read) =>
  read
    .select({ at: s.dayBook.at, who: s.dayBook.personId, act: s.dayBook.act, input: s.dayBook.input })
    .from(s.dayBook)
    .orderBy(asc(s.dayBook.id))
    .all()
    .map(({ at, who, act, input }) => ({ at, who, act, with: JSON.parse(input) as Record<string, unknown> }))

/** Every paper ever issued, in order. */
export const allDocuments = (read: Read) =>
  read
    .select({
      id: s.documents.id,
      kind: s.documents.kind,
      number: s.documents.number,
      issuedOn: s.documents.issuedOn,
      totalMinor: s.documents.totalMinor,
      taxMinor: s.documents.taxMinor,
    })
    .from(s.documents)
    .orderBy(asc(s.documents.id))
    .all()
