import { and, between, eq, inArray, sql } from 'drizzle-orm'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { TaxDue } from '../../core/tax/due.ts'
import { addedUp, type TaxRow } from '../../core/tax/rows.ts'
import type { Read } from '../file/ledger.ts'
import { readSettings } from '../rows/settings.ts'
import { documents, documentTaxes, settledTaxes } from '../schema/index.ts'

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

/** Tax settled by the money received from `from` to `to`, as it is kept day by day. */
const onMoney = (read: Read, from: string, to: string): TaxRow[] =>
  read
    .select({
      code: settledTaxes.code,
      rate: settledTaxes.rate,
      kind: settledTaxes.kind,
      taxable: sql<Minor>`sum(${settledTaxes.taxableMinor})`,
      tax: sql<Minor>`sum(${settledTaxes.taxMinor})`,
    })
    .from(settledTaxes)
    .where(between(settledTaxes.onDate, from, to))
    .groupBy(settledTaxes.code, settledTaxes.rate, settledTaxes.kind)
    .all()

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
