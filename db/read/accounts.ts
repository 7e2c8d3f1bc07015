import { and, asc, between, eq, gte, lte, type SQL, sql } from 'drizzle-orm'
import { daysBetween } from '../../core/calendar/civil.ts'
import { localOf } from '../../core/calendar/zone.ts'
import { minor } from '../../core/money/minor.ts'
import type { PaperKind } from '../../core/papers/contents.ts'
import type { Form } from '../../core/vocabulary/clock.ts'
import { repairBalance } from '../balance.ts'
import { documentRow, frozenContents } from '../frozen-papers.ts'
import type { Read } from '../ledger.ts'
import { known } from '../refusal.ts'
import * as s from '../schema/index.ts'
import type { Subject } from '../verb.ts'
import { type Turn, turned } from './turn.ts'

export { taxView } from './tax.ts'

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

const documentLines = (read: Read, where: SQL | undefined) =>
  read
    .select(columns)
    .from(s.documents)
    .innerJoin(s.owners, eq(s.owners.id, s.documents.ownerId))
    .leftJoin(s.repairs, eq(s.repairs.id, s.documents.repairId))
    .where(where)

/** Papers, newest first, a page at a time; of one kind where asked. */
export function documentsView(read: Read, { kind, ...turn }: Turn & { kind: PaperKind | null }) {
  const kept = kind ? eq(s.documents.kind, kind) : undefined
  return turned(s.documents.id, turn, kept, ({ where, orderBy, limit }) =>
    documentLines(read, where).orderBy(orderBy).limit(limit).all(),
  )
}

const paperInShort = (read: Read, where: SQL | undefined) =>
  read
    .select({ id: s.documents.id, kind: s.documents.kind, number: s.documents.number })
    .from(s.documents)
    .where(where)
    .get() ?? null

/** One paper: its line in the ledger, what it says, and the papers that correct it or are corrected by it. */
export function paperView(read: Read, id: number) {
  const paper = known(documentLines(read, eq(s.documents.id, id)).get(), 'document.unknown', 'id')
  return {
    paper,
    contents: frozenContents(documentRow(read, id)),
    corrects: paper.correctsId === null ? null : paperInShort(read, eq(s.documents.id, paper.correctsId)),
    correctedBy: paperInShort(read, eq(s.documents.correctsId, id)),
  }
}

/** What is owed on `today`: every repair whose invoices and payments do not cancel out, the longest owed first. */
export function owedView(read: Read, today: string) {
  const rows = read
    .select({
      repairId: s.repairs.id,
      number: s.repairs.number,
      owner: { id: s.owners.id, name: s.owners.name },
      billed: sql<
        string | null
      >`(SELECT min(d.issued_on) FROM documents d WHERE d.repair_id = repairs.id AND d.kind = 'invoice')`,
      paid: sql<string | null>`(SELECT min(p.on_date) FROM payments p WHERE p.repair_id = repairs.id)`,
    })
    .from(s.repairs)
    .innerJoin(s.owners, eq(s.owners.id, s.repairs.ownerId))
    .where(sql`${s.repairs.dueMinor} <> 0`)
    .all()
    .map(({ billed, paid, ...row }) => {
      const sinceOn = billed ?? paid ?? today
      const { due, ...sums } = repairBalance(read, row.repairId)
      return {
        ...row,
        billedMinor: sums.billed,
        paidMinor: sums.paid,
        dueMinor: due,
        sinceOn,
        days: daysBetween(sinceOn, today),
      }
    })
    .sort((a, b) => b.days - a.days || a.repairId - b.repairId)
  const sum = (sums: readonly number[]) => minor(sums.reduce((total, one) => total + one, 0))
  return {
    rows,
    dueMinor: sum(rows.map(row => row.dueMinor)),
    owedMinor: sum(rows.map(row => Math.max(row.dueMinor, 0))),
    heldMinor: sum(rows.map(row => Math.max(-row.dueMinor, 0))),
  }
}

/** What came in less what went out, for each way of paying that was used. */
const receivedByMethod = (read: Read, from: string, to: string) =>
  read
    .select({ method: s.payments.method, amount: sql<number>`sum(${s.payments.amountMinor})` })
    .from(s.payments)
    .where(between(s.payments.onDate, from, to))
    .groupBy(s.payments.method)
    .orderBy(asc(s.payments.method))
    .all()
    .map(({ method, amount }) => ({ method, amountMinor: minor(amount) }))

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
      receiptNumber: s.documents.number,
      owner: { id: s.owners.id, name: s.owners.name },
      repairNumber: s.repairs.number,
    })
    .from(s.payments)
    .innerJoin(s.owners, eq(s.owners.id, s.payments.ownerId))
    .leftJoin(s.repairs, eq(s.repairs.id, s.payments.repairId))
    .leftJoin(s.documents, eq(s.documents.id, s.payments.receiptId))
    .where(and(gte(s.payments.onDate, from), lte(s.payments.onDate, to)))
    .orderBy(asc(s.payments.id))
    .all()
  return {
    from,
    to,
    rows,
    byMethod: receivedByMethod(read, from, to),
    totalMinor: minor(rows.reduce((sum, row) => sum + row.amountMinor, 0)),
  }
}

interface DayBookRow {
  readonly id: number
  readonly at: string
  readonly act: string
  readonly person: string | null
  readonly subjectKind: Subject['kind']
  readonly subjectId: number
  readonly input: string
  readonly repairNumber: number | null
  readonly paperId: number | null
  readonly paperKind: PaperKind | null
  readonly paperNumber: string | null
  readonly ownerId: number | null
  readonly ownerName: string | null
  readonly clockId: number | null
  readonly form: Form | null
  readonly thing: string | null
}

const dayBookRows = (read: Read, where: SQL | undefined, orderBy: SQL, limit: number) =>
  read.all<DayBookRow>(sql`
    SELECT day_book.id, day_book.at, day_book.act, actor.name AS person,
      day_book.subject_kind AS subjectKind, day_book.subject_id AS subjectId, day_book.input,
      coalesce(r.number, dr.number) AS repairNumber,
      d.id AS paperId, d.kind AS paperKind, d.number AS paperNumber,
      coalesce(o.id, ro.id) AS ownerId, coalesce(o.name, ro.name) AS ownerName,
      c.id AS clockId, c.form AS form, coalesce(p.name, parts.name, vendors.name) AS thing
    FROM day_book
    LEFT JOIN people actor ON actor.id = day_book.person_id
    LEFT JOIN estimates e ON day_book.subject_kind = 'estimate' AND e.id = day_book.subject_id
    LEFT JOIN run_in_runs run ON day_book.subject_kind = 'run-in' AND run.id = day_book.subject_id
    LEFT JOIN repairs r ON r.id = CASE day_book.subject_kind
      WHEN 'repair' THEN day_book.subject_id WHEN 'estimate' THEN e.repair_id WHEN 'run-in' THEN run.repair_id END
    LEFT JOIN documents d ON day_book.subject_kind = 'document' AND d.id = day_book.subject_id
    LEFT JOIN repairs dr ON dr.id = d.repair_id
    LEFT JOIN owners o ON o.id = CASE day_book.subject_kind
      WHEN 'owner' THEN day_book.subject_id WHEN 'document' THEN d.owner_id END
    LEFT JOIN owners ro ON ro.id = r.owner_id
    LEFT JOIN clocks c ON day_book.subject_kind = 'clock' AND c.id = day_book.subject_id
    LEFT JOIN people p ON day_book.subject_kind = 'person' AND p.id = day_book.subject_id
    LEFT JOIN parts ON day_book.subject_kind = 'part' AND parts.id = day_book.subject_id
    LEFT JOIN vendors ON day_book.subject_kind = 'vendor' AND vendors.id = day_book.subject_id
    WHERE ${where ?? sql`1`} ORDER BY ${orderBy} LIMIT ${limit}`)

/** The day book, newest first, a page at a time: each act with who did it, its input, and what it was about. */
export function dayBookView(read: Read, turn: Turn, timeZone: string) {
  const { rows, ...more } = turned(s.dayBook.id, turn, undefined, ({ where, orderBy, limit }) =>
    dayBookRows(read, where, orderBy, limit),
  )
  return { ...more, rows: rows.map(row => ({ ...row, local: localOf(row.at, timeZone) })) }
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
