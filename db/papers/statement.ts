import { and, eq, inArray } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { minor } from '../../core/money/minor.ts'
import type { StatementContents, StatementRow } from '../../core/papers/working.ts'
import { ownerRow } from '../books/register.ts'
import { paperHead } from '../issue.ts'
import type { Read } from '../ledger.ts'
import { documents, owners, payments, repairs } from '../schema/index.ts'
import { readSettings } from '../settings.ts'

/** An entry before its balance is known, with the instant it is ordered by. */
type Entry = Omit<StatementRow, 'balance'> & { readonly at: string }

/** An owner's account to the day of `at`, with the balance after each entry; refuses an owner merged into another. */
export function statementContents(read: Read, ownerId: number, at: string): StatementContents {
  ownerRow(read, ownerId)
  const settings = readSettings(read)
  const ownerIds = withMerged(read, ownerId)
  const [billed, paid] = [billedEntries(read, ownerIds), paidEntries(read, ownerIds)]
  const rows = withBalance([...billed, ...paid])
  return {
    ...paperHead(read, settings, civilDateOf(at, settings.place.timeZone), { ownerId }),
    kind: 'statement',
    rows,
    billed: sumOf(billed),
    paid: minor(-sumOf(paid)),
    balance: rows.at(-1)?.balance ?? minor(0),
  }
}

const sumOf = (entries: readonly Entry[]) => minor(entries.reduce((sum, { amount }) => sum + amount, 0))

/** The owner and every duplicate merged into it, also through others: papers issued to a duplicate keep its number. */
function withMerged(read: Read, ownerId: number): number[] {
  const ids = [ownerId]
  for (let from = 0; from < ids.length; ) {
    const into = ids.slice(from)
    from = ids.length
    const merged = read.select({ id: owners.id }).from(owners).where(inArray(owners.mergedIntoId, into)).all()
    ids.push(...merged.map(({ id }) => id).filter(id => !ids.includes(id)))
  }
  return ids
}

const billedKinds = ['invoice', 'credit-note'] as const

const billedEntries = (read: Read, ownerIds: readonly number[]): Entry[] =>
  read
    .select({ document: documents, repairNumber: repairs.number })
    .from(documents)
    .leftJoin(repairs, eq(repairs.id, documents.repairId))
    .where(and(inArray(documents.ownerId, [...ownerIds]), inArray(documents.kind, [...billedKinds])))
    .all()
    .map(({ document, repairNumber }) => ({
      at: document.issuedAt,
      on: document.issuedOn,
      entry: document.kind === 'invoice' ? 'invoice' : 'credit-note',
      number: document.number,
      ...(repairNumber === null ? {} : { repairNumber: String(repairNumber) }),
      amount: document.totalMinor,
    }))

const paidEntries = (read: Read, ownerIds: readonly number[]): Entry[] =>
  read
    .select({ payment: payments, repairNumber: repairs.number, number: documents.number })
    .from(payments)
    .leftJoin(repairs, eq(repairs.id, payments.repairId))
    .leftJoin(documents, eq(documents.id, payments.receiptId))
    .where(inArray(payments.ownerId, [...ownerIds]))
    .all()
    .map(({ payment, repairNumber, number }) => ({
      at: payment.at,
      on: payment.onDate,
      entry: payment.amountMinor < 0 ? 'refund' : 'payment',
      method: payment.method,
      ...(number === null ? {} : { number }),
      ...(repairNumber === null ? {} : { repairNumber: String(repairNumber) }),
      amount: minor(-payment.amountMinor),
    }))

/** By day, and within a day in the order things were done. */
const inOrder = (a: Entry, b: Entry): number =>
  a.on === b.on ? (a.at < b.at ? -1 : a.at > b.at ? 1 : 0) : a.on < b.on ? -1 : 1

function withBalance(entries: readonly Entry[]): StatementRow[] {
  let sum = 0
  return [...entries].sort(inOrder).map(({ at: _, ...entry }) => {
    sum += entry.amount
    return { ...entry, balance: minor(sum) }
  })
}
