import { and, asc, eq, inArray } from 'drizzle-orm'
import type { Minor } from '../../core/money/minor.ts'
import { type Billed, type Paid, taxByDay } from '../../core/tax/on-payment.ts'
import type { Read, Write } from '../file/ledger.ts'
import { documents, documentTaxes, payments, settledTaxes, writeOffs } from '../schema/index.ts'
import { settle } from './facts.ts'

/** The bills of a repair with their frozen taxes. */
function billsOf(read: Read, repairId: number): Billed[] {
  const rows = read
    .select({ document: documents, tax: documentTaxes })
    .from(documents)
    .innerJoin(documentTaxes, eq(documentTaxes.documentId, documents.id))
    .where(and(eq(documents.repairId, repairId), inArray(documents.kind, ['invoice', 'credit-note'])))
    .orderBy(asc(documents.id), asc(documentTaxes.id))
    .all()
  return [...Map.groupBy(rows, ({ document }) => document.id).values()].flatMap(([first, ...more]) =>
    first === undefined
      ? []
      : {
          on: first.document.issuedOn,
          total: first.document.totalMinor,
          rows: [first, ...more].map(({ tax: { code, rate, kind, taxableMinor, taxMinor } }) => ({
            code,
            rate,
            kind,
            taxable: taxableMinor,
            tax: taxMinor,
          })),
        },
  )
}

/** What counts as paid on a repair: money, and what cash could not pay to the smallest coin. A rest given up is not paid. */
function paidOn(read: Read, repairId: number): Paid[] {
  const money = read
    .select({ on: payments.onDate, amount: payments.amountMinor })
    .from(payments)
    .where(eq(payments.repairId, repairId))
    .all()
  const rounded = read
    .select({ on: writeOffs.onDate, amount: writeOffs.amountMinor })
    .from(writeOffs)
    .where(and(eq(writeOffs.repairId, repairId), eq(writeOffs.kind, 'rounding')))
    .all()
  return [...money, ...rounded]
}

/** One row of the tax that is settled on a repair, as it is kept. */
export interface SettledTax {
  readonly onDate: string
  readonly code: string
  readonly rate: string
  readonly kind: (typeof settledTaxes.$inferSelect)['kind']
  readonly taxableMinor: Minor
  readonly taxMinor: Minor
}

/** What of the taxes of a repair is settled on which day, by its documents and payments. */
export const settledOf = (read: Read, repairId: number): SettledTax[] =>
  taxByDay({ billed: billsOf(read, repairId), paid: paidOn(read, repairId) }).flatMap(({ on, rows }) =>
    rows.map(({ code, rate, kind, taxable, tax }) => ({
      onDate: on,
      code,
      rate,
      kind,
      taxableMinor: taxable,
      taxMinor: tax,
    })),
  )

/** What is kept of it. */
export const settledKept = (read: Read, repairId: number): SettledTax[] =>
  read
    .select({
      onDate: settledTaxes.onDate,
      code: settledTaxes.code,
      rate: settledTaxes.rate,
      kind: settledTaxes.kind,
      taxableMinor: settledTaxes.taxableMinor,
      taxMinor: settledTaxes.taxMinor,
    })
    .from(settledTaxes)
    .where(eq(settledTaxes.repairId, repairId))
    .orderBy(asc(settledTaxes.id))
    .all()

/** Derives anew what follows from the money of a repair: its standing and balance, and the tax that is settled. Every verb of money on a repair ends with this. */
export function settleMoney(tx: Write, repairId: number, at: string): void {
  tx.delete(settledTaxes).where(eq(settledTaxes.repairId, repairId)).run()
  for (const row of settledOf(tx, repairId))
    tx.insert(settledTaxes)
      .values({ repairId, ...row })
      .run()
  settle(tx, repairId, at)
}
