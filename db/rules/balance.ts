import { and, eq, inArray, isNull, type SQL, sql } from 'drizzle-orm'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { Read } from '../file/ledger.ts'
import { withMerged } from '../rows/merged-owners.ts'
import { amongAsked, askedId, question, these } from '../rows/question.ts'
import { documents, payments, writeOffs } from '../schema/index.ts'

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

const billedOf = question(read =>
  read
    .select({ sum: sql<number>`ifnull(sum(${documents.totalMinor}), 0)` })
    .from(documents)
    .where(and(eq(documents.repairId, askedId), inArray(documents.kind, ['invoice', 'credit-note']))),
)

const paid = (where: SQL | undefined) =>
  question(read =>
    read
      .select({ sum: sql<number>`ifnull(sum(${payments.amountMinor}), 0)` })
      .from(payments)
      .where(where),
  )

const rounds = sql`${writeOffs.kind} = 'rounding'`

const writtenOff = (where: SQL | undefined) =>
  question(read =>
    read
      .select({
        given: sql<number>`ifnull(sum(${writeOffs.amountMinor}) FILTER (WHERE NOT (${rounds})), 0)`,
        rounded: sql<number>`ifnull(sum(${writeOffs.amountMinor}) FILTER (WHERE ${rounds}), 0)`,
      })
      .from(writeOffs)
      .where(where),
  )

const paidOf = paid(eq(payments.repairId, askedId))
const writtenOffOf = writtenOff(eq(writeOffs.repairId, askedId))
const movedFromRepairs = paid(and(amongAsked(payments.ownerId), eq(payments.method, 'account')))
const paidWithoutRepair = paid(and(amongAsked(payments.ownerId), isNull(payments.repairId)))
const roundedWithoutRepair = writtenOff(and(amongAsked(writeOffs.ownerId), isNull(writeOffs.repairId)))
const nothing = { given: 0, rounded: 0 }

/** The balance of one repair. */
export function repairBalance(read: Read, repairId: number): Balance {
  const id = { id: repairId }
  const billed = billedOf(read).get(id)?.sum ?? 0
  const paid = paidOf(read).get(id)?.sum ?? 0
  const { given, rounded } = writtenOffOf(read).get(id) ?? nothing
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
  const ids = these(withMerged(read, ownerId))
  const fromRepairs = movedFromRepairs(read).get(ids)?.sum ?? 0
  const paidOut = paidWithoutRepair(read).get(ids)?.sum ?? 0
  const { rounded } = roundedWithoutRepair(read).get(ids) ?? nothing
  return minor(paidOut + rounded - fromRepairs)
}
