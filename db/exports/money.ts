import { sql } from 'drizzle-orm'
import { minorText } from '../../core/money/minor.ts'
import type { PaperContents } from '../../core/papers/contents.ts'
import type { Read } from '../file/ledger.ts'
import { byId } from '../rows/by-id.ts'
import { type Table, table } from './table.ts'

/** Papers as they were issued. */
export const documents = table({
  columns: [
    'id',
    'kind',
    'number',
    'issued_on',
    'owner',
    'repair',
    'corrects',
    'currency',
    'total',
    'tax',
    'hash',
  ],
  amounts: ['total', 'tax'],
  page: (after, limit) => sql`
    SELECT d.id, d.kind, d.number, d.issued_on, d.owner_id AS owner, r.number AS repair, corrected.number AS corrects,
      d.currency, d.total_minor AS total, d.tax_minor AS tax, d.contents_hash AS hash
    FROM documents d LEFT JOIN repairs r ON r.id = d.repair_id LEFT JOIN documents corrected ON corrected.id = d.corrects_id
    WHERE d.id > ${after} ORDER BY d.id LIMIT ${limit}`,
})

/** Money received, and money given back as negative amounts. */
export const payments = table({
  columns: ['id', 'on', 'owner', 'repair', 'invoice', 'receipt', 'method', 'amount', 'reference'],
  amounts: ['amount'],
  page: (after, limit) => sql`
    SELECT p.id, p.on_date AS "on", p.owner_id AS owner, r.number AS repair, i.number AS invoice, c.number AS receipt,
      p.method, p.amount_minor AS amount, p.reference
    FROM payments p LEFT JOIN repairs r ON r.id = p.repair_id LEFT JOIN documents i ON i.id = p.invoice_id
      LEFT JOIN documents c ON c.id = p.receipt_id
    WHERE p.id > ${after} ORDER BY p.id LIMIT ${limit}`,
})

/** What was taken off what is owed without money; what was added again as negative amounts. */
export const writeOffs = table({
  columns: ['id', 'on', 'owner', 'repair', 'payment', 'kind', 'amount', 'reason'],
  amounts: ['amount'],
  page: (after, limit) => sql`
    SELECT w.id, w.on_date AS "on", w.owner_id AS owner, r.number AS repair, w.payment_id AS payment, w.kind,
      w.amount_minor AS amount, w.reason
    FROM write_offs w LEFT JOIN repairs r ON r.id = w.repair_id WHERE w.id > ${after} ORDER BY w.id LIMIT ${limit}`,
})

/** Counts of the cash drawer. */
export const drawerCounts = table({
  columns: ['id', 'on', 'expected', 'counted', 'difference', 'taken', 'remark'],
  amounts: ['expected', 'counted', 'difference', 'taken'],
  page: (after, limit) => sql`
    SELECT id, on_date AS "on", expected_minor AS expected, counted_minor AS counted,
      counted_minor - expected_minor AS difference, taken_minor AS taken, remark
    FROM drawer_counts WHERE id > ${after} ORDER BY id LIMIT ${limit}`,
})

interface Frozen {
  readonly id: number
  readonly contents: string
}

/** The frozen contents of estimates, invoices and credit notes, in the order of issue. */
export function* pricedPapers(read: Read): Generator<Extract<PaperContents, { priced: unknown }>> {
  const rows = byId((after, limit) =>
    read.all<Frozen>(sql`
      SELECT id, contents FROM documents
      WHERE kind IN ('estimate', 'invoice', 'credit-note') AND id > ${after} ORDER BY id LIMIT ${limit}`),
  )
  for (const { contents } of rows) {
    const paper = JSON.parse(contents) as PaperContents
    if ('priced' in paper) yield paper
  }
}

/** The lines of estimates, invoices and credit notes, as they were frozen. */
export const documentLines: Table = {
  columns: [
    'document',
    'number',
    'line',
    'kind',
    'description',
    'quantity',
    'unit',
    'taxes',
    'currency',
    'net',
  ],
  amounts: ['unit', 'net'],
  *rows(read) {
    for (const { kind: document, number, currency, lines } of pricedPapers(read))
      for (const [index, { kind, description, quantity, unit, taxes, net }] of lines.entries())
        yield {
          document,
          number,
          line: index + 1,
          kind,
          description,
          quantity,
          unit,
          taxes: taxes.map(({ code, rate }) => `${code} ${rate}`).join('; '),
          currency,
          net: minorText(net, currency),
        }
  },
}
