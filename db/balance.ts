import { and, eq, inArray, sql } from 'drizzle-orm'
import { type Minor, minor } from '../core/money/minor.ts'
import type { Read } from './ledger.ts'
import { documents, payments } from './schema/index.ts'

/** What a repair stands at: billed (invoices less credit notes), paid (less what was given back), and due. */
export interface Balance {
  readonly billed: Minor
  readonly paid: Minor
  /** Positive when the owner owes, negative when the shop holds the owner's money. */
  readonly due: Minor
}

const balance = (billed: number, paid: number): Balance => ({
  billed: minor(billed),
  paid: minor(paid),
  due: minor(billed - paid),
})

/** The balance of one repair. */
export function repairBalance(read: Read, repairId: number): Balance {
  const billed = read
    .select({ sum: sql<number>`ifnull(sum(${documents.totalMinor}), 0)` })
    .from(documents)
    .where(and(eq(documents.repairId, repairId), inArray(documents.kind, ['invoice', 'credit-note'])))
    .get()
  const paid = read
    .select({ sum: sql<number>`ifnull(sum(${payments.amountMinor}), 0)` })
    .from(payments)
    .where(eq(payments.repairId, repairId))
    .get()
  return balance(billed?.sum ?? 0, paid?.sum ?? 0)
}
