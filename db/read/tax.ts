import { and, asc, between, eq, inArray, lte, type SQL, sql } from 'drizzle-orm'
import type { SQLiteColumn } from 'drizzle-orm/sqlite-core'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { TaxDue } from '../../core/tax/due.ts'
import { type Account, type Billed, type Paid, taxOnPayments } from '../../core/tax/on-payment.ts'
import { addedUp, type TaxRow } from '../../core/tax/rows.ts'
import type { Read } from '../ledger.ts'
import { documents, documentTaxes, payments } from '../schema/index.ts'
import { readSettings } from '../settings.ts'

const bills = inArray(documents.kind, ['invoice', 'credit-note'])

/** Tax of the invoices and credit notes issued from `from` to `to`. */
const onInvoices = (read: Read, from: string, to: string): TaxRow[] =>
  read
    .select({
      code: documentTaxes.code,
      rate: documentTaxes.rate,
      kind: documentTaxes.kind,
      taxable: sql<Minor>`sum(${documentTaxes.taxableMinor})`,
      tax: sql<Minor>`sum(${documentTaxes.taxMinor})`,
    })
    .from(documentTaxes)
    .innerJoin(documents, eq(documents.id, documentTaxes.documentId))
    .where(and(between(documents.issuedOn, from, to), bills))
    .groupBy(documentTaxes.code, documentTaxes.rate, documentTaxes.kind)
    .all()

/** What documents and payments belong together: their repair, or the invoice where there is none. */
const documentAccount = sql<number>`coalesce(${documents.repairId}, -coalesce(${documents.correctsId}, ${documents.id}))`
const paymentAccount = sql<number>`coalesce(${payments.repairId}, -${payments.invoiceId})`

/** The accounts where something was billed or paid in the period: only their tax can have moved. */
const moved = (from: string, to: string): SQL => sql`(
  SELECT ${documentAccount} FROM ${documents} WHERE ${and(between(documents.issuedOn, from, to), bills)}
  UNION SELECT ${paymentAccount} FROM ${payments} WHERE ${between(payments.onDate, from, to)})`

/** Those of a table's rows; by the repair first, which has an index. */
const inMoved = (repairId: SQLiteColumn, account: SQL, from: string, to: string): SQL =>
  sql`(${repairId} IN ${moved(from, to)} OR (${repairId} IS NULL AND ${account} IN ${moved(from, to)}))`

type Accounts = Map<number, { billed: Billed[]; paid: Paid[] }>

function accountIn(accounts: Accounts, key: number) {
  const account = accounts.get(key) ?? { billed: [], paid: [] }
  accounts.set(key, account)
  return account
}

function addBills(read: Read, accounts: Accounts, from: string, to: string): void {
  const rows = read
    .select({
      key: documentAccount,
      id: documents.id,
      on: documents.issuedOn,
      total: documents.totalMinor,
      code: documentTaxes.code,
      rate: documentTaxes.rate,
      kind: documentTaxes.kind,
      taxable: documentTaxes.taxableMinor,
      tax: documentTaxes.taxMinor,
    })
    .from(documents)
    .innerJoin(documentTaxes, eq(documentTaxes.documentId, documents.id))
    .where(and(bills, lte(documents.issuedOn, to), inMoved(documents.repairId, documentAccount, from, to)))
    .orderBy(asc(documents.id), asc(documentTaxes.id))
    .all()
  let last: { id: number; rows: TaxRow[] } | undefined
  for (const { key, id, on, total, ...row } of rows) {
    if (last?.id !== id) {
      last = { id, rows: [] }
      accountIn(accounts, key).billed.push({ on, total, rows: last.rows })
    }
    last.rows.push({ ...row, taxable: row.taxable ?? minor(0), tax: row.tax ?? minor(0) })
  }
}

function addPayments(read: Read, accounts: Accounts, from: string, to: string): void {
  const rows = read
    .select({ key: paymentAccount, on: payments.onDate, amount: payments.amountMinor })
    .from(payments)
    .where(and(lte(payments.onDate, to), inMoved(payments.repairId, paymentAccount, from, to)))
    .all()
  for (const { key, on, amount } of rows) accountIn(accounts, key).paid.push({ on, amount })
}

/** Tax settled by the money received from `from` to `to`. */
function onMoney(read: Read, from: string, to: string): TaxRow[] {
  const accounts: Accounts = new Map()
  addBills(read, accounts, from, to)
  addPayments(read, accounts, from, to)
  return addedUp([...accounts.values()].flatMap((account: Account) => taxOnPayments(account, from, to)))
}

const sum = (rows: readonly TaxRow[], of: 'taxable' | 'tax'): Minor =>
  minor(rows.reduce((total, row) => total + row[of], 0))

const inOrder = (a: TaxRow, b: TaxRow): number =>
  a.code.localeCompare(b.code, 'en') || Number(a.rate) - Number(b.rate) || a.kind.localeCompare(b.kind, 'en')

const shown = ({ taxable, tax, ...row }: TaxRow) => ({ ...row, taxableMinor: taxable, taxMinor: tax })

/**
 * Tax by code, rate and kind of line from `from` to `to`, both days included, from the frozen documents: with the invoice
 * or with the payment, as the shop's settings (or `due`) say. `rows` are by code and rate, `byKind` tells them apart by
 * kind of line, `untaxed` is what bears no tax.
 */
export function taxView(read: Read, from: string, to: string, due: TaxDue = readSettings(read).tax.due) {
  const all = (due === 'payment' ? onMoney : onInvoices)(read, from, to).toSorted(inOrder)
  const taxed = all.filter(row => row.code !== '')
  const untaxed = all.filter(row => row.code === '')
  return {
    from,
    to,
    due,
    rows: addedUp(taxed.map(row => ({ ...row, kind: '' as const }))).map(({ code, rate, taxable, tax }) => ({
      code,
      rate,
      taxableMinor: taxable,
      taxMinor: tax,
    })),
    byKind: taxed.map(shown),
    untaxed: untaxed.map(({ kind, taxable }) => ({ kind, netMinor: taxable })),
    taxableMinor: sum(taxed, 'taxable'),
    taxMinor: sum(taxed, 'tax'),
  }
}
