import { and, eq, inArray, ne } from 'drizzle-orm'
import type { Period } from '../../core/calendar/period.ts'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { StatementRow } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { documents, payments, repairs, writeOffs } from '../schema/index.ts'
import { among } from './among.ts'
import { withMerged } from './merged-owners.ts'

/** An entry before its balance is known, with the instant it is ordered by. */
type Entry = Omit<StatementRow, 'balance'> & { readonly at: string }

/** What was billed, paid and given up between an owner and the shop, with the balance after each entry. */
export interface OwnerEntries {
  readonly rows: readonly StatementRow[]
  /** What was owed before the first of them. */
  readonly before: Minor
  readonly billed: Minor
  readonly paid: Minor
  readonly writtenOff: Minor
  readonly balance: Minor
}

const onRepair = (number: number | null) => (number === null ? {} : { repairNumber: String(number) })

const billedEntries = (read: Read, ownerIds: readonly number[]): Entry[] =>
  read
    .select({ document: documents, repairNumber: repairs.number })
    .from(documents)
    .leftJoin(repairs, eq(repairs.id, documents.repairId))
    .where(and(among(documents.ownerId, ownerIds), inArray(documents.kind, ['invoice', 'credit-note'])))
    .all()
    .map(({ document, repairNumber }) => ({
      at: document.issuedAt,
      on: document.issuedOn,
      entry: document.kind === 'invoice' ? 'invoice' : 'credit-note',
      number: document.number,
      ...onRepair(repairNumber),
      amount: document.totalMinor,
    }))

/** Money. What only moves between a repair and the owner's account changes nothing between owner and shop. */
const paidEntries = (read: Read, ownerIds: readonly number[]): Entry[] =>
  read
    .select({ payment: payments, repairNumber: repairs.number, number: documents.number })
    .from(payments)
    .leftJoin(repairs, eq(repairs.id, payments.repairId))
    .leftJoin(documents, eq(documents.id, payments.receiptId))
    .where(and(among(payments.ownerId, ownerIds), ne(payments.method, 'account')))
    .all()
    .map(({ payment, repairNumber, number }) => ({
      at: payment.at,
      on: payment.onDate,
      entry: payment.amountMinor < 0 ? 'refund' : 'payment',
      method: payment.method,
      ...(number === null ? {} : { number }),
      ...onRepair(repairNumber),
      amount: minor(-payment.amountMinor),
    }))

const writtenOffEntries = (read: Read, ownerIds: readonly number[]): Entry[] =>
  read
    .select({ writeOff: writeOffs, repairNumber: repairs.number })
    .from(writeOffs)
    .leftJoin(repairs, eq(repairs.id, writeOffs.repairId))
    .where(among(writeOffs.ownerId, ownerIds))
    .all()
    .map(({ writeOff, repairNumber }) => ({
      at: writeOff.at,
      on: writeOff.onDate,
      entry: writeOff.kind === 'rounding' ? 'rounding' : 'write-off',
      ...onRepair(repairNumber),
      amount: minor(-writeOff.amountMinor),
    }))

const text = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** By day, and within a day in the order things were done. */
const inOrder = (a: Entry, b: Entry): number => text(a.on, b.on) || text(a.at, b.at)

const sumOf = (entries: readonly Entry[]): Minor =>
  minor(entries.reduce((sum, { amount }) => sum + amount, 0))

function withBalance(entries: readonly Entry[], before: number): StatementRow[] {
  let sum = before
  return entries.map(({ at: _, ...entry }) => {
    sum += entry.amount
    return { ...entry, balance: minor(sum) }
  })
}

/** Everything between an owner, with its duplicates, and the shop; of `period`, where one is asked for. */
export function ownerEntries(read: Read, ownerId: number, period: Period | null): OwnerEntries {
  const ownerIds = withMerged(read, ownerId)
  const within = (entries: Entry[]) =>
    period ? entries.filter(({ on }) => on >= period.from && on <= period.to) : entries
  const all = [billedEntries, paidEntries, writtenOffEntries].map(of => of(read, ownerIds))
  const [billed = [], paid = [], writtenOff = []] = all.map(within)
  const before = period ? sumOf(all.flat().filter(({ on }) => on < period.from)) : minor(0)
  const rows = withBalance([...billed, ...paid, ...writtenOff].sort(inOrder), before)
  return {
    rows,
    before,
    billed: sumOf(billed),
    paid: minor(-sumOf(paid)),
    writtenOff: minor(-sumOf(writtenOff)),
    balance: rows.at(-1)?.balance ?? before,
  }
}
