import { and, asc, between, eq, gte, lte, sql } from 'drizzle-orm'
import { minor } from '../../core/money/minor.ts'
import type { Read } from '../file/ledger.ts'
import * as s from '../schema/index.ts'

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

/** Money in and out between two days, both included, in order. What goes to an owner’s account or is paid from it is no money received. */
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
    totalMinor: minor(rows.reduce((sum, row) => sum + (row.method === 'account' ? 0 : row.amountMinor), 0)),
  }
}
