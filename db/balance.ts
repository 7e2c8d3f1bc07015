import { and, eq, inArray, isNull, or, type SQL, sql } from 'drizzle-orm'
import { type Minor, minor } from '../core/money/minor.ts'
import { among } from './among.ts'
import type { Read } from './ledger.ts'
import { withMerged } from './merged-owners.ts'
import { documents, payments, writeOffs } from './schema/index.ts'

/** What a repair stands at: billed (invoices less credit notes), paid (less what was given back), given up, and due. */
export interface Balance {
  readonly billed: Minor
  readonly paid: Minor
  /** Bad debts and courtesies: what is open no longer though nobody paid it. */
  readonly writtenOff: Minor
  /** What cash could not pay to the smallest coin; below nothing where it paid more. */
  readonly rounded: Minor
  /** Positive when the owner owes, negative when the shop holds the owner's money. */
  readonly due: Minor
}

const billedOf = (read: Read, repairId: number): number =>
  read
    .select({ sum: sql<number>`ifnull(sum(${documents.totalMinor}), 0)` })
    .from(documents)
    .where(and(eq(documents.repairId, repairId), inArray(documents.kind, ['invoice', 'credit-note'])))
    .get()?.sum ?? 0

const paidOf = (read: Read, where: SQL | undefined): number =>
  read
    .select({ sum: sql<number>`ifnull(sum(${payments.amountMinor}), 0)` })
    .from(payments)
    .where(where)
    .get()?.sum ?? 0

function writtenOffOf(read: Read, where: SQL | undefined): { given: number; rounded: number } {
  const rounds = sql`${writeOffs.kind} = 'rounding'`
  return (
    read
      .select({
        given: sql<number>`ifnull(sum(${writeOffs.amountMinor}) FILTER (WHERE NOT (${rounds})), 0)`,
        rounded: sql<number>`ifnull(sum(${writeOffs.amountMinor}) FILTER (WHERE ${rounds}), 0)`,
      })
      .from(writeOffs)
      .where(where)
      .get() ?? { given: 0, rounded: 0 }
  )
}

/** The balance of one repair. */
export function repairBalance(read: Read, repairId: number): Balance {
  const billed = billedOf(read, repairId)
  const paid = paidOf(read, eq(payments.repairId, repairId))
  const { given, rounded } = writtenOffOf(read, eq(writeOffs.repairId, repairId))
  return {
    billed: minor(billed),
    paid: minor(paid),
    writtenOff: minor(given),
    rounded: minor(rounded),
    due: minor(billed - paid - given - rounded),
  }
}

/**
 * What the shop holds on an owner's account, duplicates merged into it counted in: what went there from repairs, less what was used
 * for others and what was paid out.
 */
export function accountHeld(read: Read, ownerId: number): Minor {
  const ids = withMerged(read, ownerId)
  const fromRepairs = paidOf(read, and(among(payments.ownerId, ids), eq(payments.method, 'account')))
  const paidOut = paidOf(read, and(among(payments.ownerId, ids), isNull(payments.repairId)))
  const { rounded } = writtenOffOf(read, and(among(writeOffs.ownerId, ids), isNull(writeOffs.repairId)))
  return minor(paidOut + rounded - fromRepairs)
}

/** Payments that move an owner's account. */
export const movesAccount = or(eq(payments.method, 'account'), isNull(payments.repairId))
