import { sql } from 'drizzle-orm'
import { accountPart, journalHead, type Transaction, transactionText } from '../../core/exports/journal.ts'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { CreditNoteContents, InvoiceContents } from '../../core/papers/contents.ts'
import { type LineKind, lineKinds } from '../../core/pricing/kinds/index.ts'
import {
  type PaymentMethod,
  paymentMethods,
  type WriteOffKind,
  writeOffCauses,
} from '../../core/vocabulary/work.ts'
import type { Read } from '../file/ledger.ts'
import { byId } from '../rows/by-id.ts'
import { readSettings } from '../rows/settings.ts'
import { pricedPapers } from './money.ts'

/** What the owners owe; below nothing, what the shop holds for them on their repairs. */
const owedAccount = 'assets:owed by owners'
const heldAccount = 'liabilities:owners’ accounts'
const drawerAccount = 'assets:received:cash'
const takenAccount = 'assets:taken out of the drawer'
const drawerDifferences = 'expenses:drawer differences'
const receivedAccount = (method: PaymentMethod) =>
  method === 'account' ? heldAccount : `assets:received:${method}`
const writtenOffAccount = (kind: WriteOffKind) =>
  kind === 'rounding' ? 'expenses:cash rounding' : `expenses:written off:${kind.replace('-', ' ')}`
const incomeAccount = (kind: LineKind | null) => `income:${kind ?? 'whole document'}`
const taxAccount = ({ code, rate }: { code: string; rate: string }) =>
  `liabilities:tax:${accountPart(`${code} ${rate}%`)}`

type Bill = InvoiceContents | CreditNoteContents

const negative = (amount: number): Minor => minor(-amount)

/** An invoice or credit note: owed by the owner against income by kind of line and tax to be paid on. */
function billed({ number, issuedOn, currency, owner, lines, priced }: Bill): Transaction {
  const kinds = (Object.keys(lineKinds) as LineKind[]).map(kind => ({
    account: incomeAccount(kind),
    amount: negative(lines.filter(line => line.kind === kind).reduce((sum, { net }) => sum + net, 0)),
  }))
  const ofLines = kinds.reduce((sum, { amount }) => sum - amount, 0)
  return {
    on: issuedOn,
    code: number,
    description: owner.name,
    currency,
    postings: [
      { account: owedAccount, amount: priced.taxInclusive },
      ...kinds,
      { account: incomeAccount(null), amount: negative(priced.taxExclusive - ofLines) },
      ...priced.taxes.map(tax => ({ account: taxAccount(tax), amount: negative(tax.tax) })),
    ],
  }
}

interface MovedRow {
  readonly id: number
  readonly on: string
  readonly owner: string
  readonly onRepair: 0 | 1
  readonly amount: Minor
}

/** Whose account stands against money: what is owed on repairs, or what is held for the owner. */
const ownersSide = ({ onRepair }: MovedRow) => (onRepair ? owedAccount : heldAccount)

interface PaidRow extends MovedRow {
  readonly receipt: string | null
  readonly method: PaymentMethod
}

const paidRows = (read: Read) =>
  byId((after, limit) =>
    read.all<PaidRow>(sql`
      SELECT p.id, p.on_date AS "on", o.name AS owner, d.number AS receipt, p.method, p.amount_minor AS amount,
        p.repair_id IS NOT NULL AS onRepair
      FROM payments p JOIN owners o ON o.id = p.owner_id LEFT JOIN documents d ON d.id = p.receipt_id
      WHERE p.id > ${after} ORDER BY p.id LIMIT ${limit}`),
  )

const paid = (row: PaidRow, currency: string): Transaction => ({
  on: row.on,
  code: row.receipt ?? `payment ${row.id}`,
  description: row.owner,
  currency,
  postings: [
    { account: receivedAccount(row.method), amount: row.amount },
    { account: ownersSide(row), amount: negative(row.amount) },
  ],
})

interface WrittenOffRow extends MovedRow {
  readonly kind: WriteOffKind
}

const writtenOffRows = (read: Read) =>
  byId((after, limit) =>
    read.all<WrittenOffRow>(sql`
      SELECT w.id, w.on_date AS "on", o.name AS owner, w.kind, w.amount_minor AS amount, w.repair_id IS NOT NULL AS onRepair
      FROM write_offs w JOIN owners o ON o.id = w.owner_id WHERE w.id > ${after} ORDER BY w.id LIMIT ${limit}`),
  )

const writtenOff = (row: WrittenOffRow, currency: string): Transaction => ({
  on: row.on,
  code: `write-off ${row.id}`,
  description: row.owner,
  currency,
  postings: [
    { account: writtenOffAccount(row.kind), amount: row.amount },
    { account: ownersSide(row), amount: negative(row.amount) },
  ],
})

interface CountRow {
  readonly id: number
  readonly on: string
  readonly remark: string
  readonly difference: number
  readonly taken: Minor
}

const countRows = (read: Read) =>
  byId((after, limit) =>
    read.all<CountRow>(sql`
      SELECT id, on_date AS "on", remark, counted_minor - expected_minor AS difference, taken_minor AS taken
      FROM drawer_counts WHERE id > ${after} ORDER BY id LIMIT ${limit}`),
  )

const counted = ({ id, on, remark, difference, taken }: CountRow, currency: string): Transaction => ({
  on,
  code: `count ${id}`,
  description: remark,
  currency,
  postings: [
    { account: drawerAccount, amount: minor(difference - taken) },
    { account: drawerDifferences, amount: negative(difference) },
    { account: takenAccount, amount: taken },
  ],
})

function accounts(read: Read): string[] {
  const taxes = read.all<{ code: string; rate: string }>(
    sql`SELECT DISTINCT code, rate FROM document_taxes WHERE code <> '' ORDER BY code, rate`,
  )
  return [
    owedAccount,
    ...paymentMethods.map(receivedAccount),
    takenAccount,
    drawerDifferences,
    ...[...writeOffCauses, 'rounding' as const].map(writtenOffAccount),
    ...(Object.keys(lineKinds) as LineKind[]).map(incomeAccount),
    incomeAccount(null),
    ...new Set(taxes.map(taxAccount)),
  ]
}

function currencies(read: Read, own: string): string[] {
  const used = read.all<{ currency: string }>(sql`SELECT DISTINCT currency FROM documents ORDER BY currency`)
  return [...new Set([own, ...used.map(({ currency }) => currency)])]
}

/** The shop's books as a plain-text journal, piece by piece: every invoice, credit note, payment, write-off and count of the drawer one transaction. */
export function* journal(read: Read): Generator<string> {
  const { currency } = readSettings(read).place
  yield journalHead(currencies(read, currency), accounts(read))
  for (const paper of pricedPapers(read)) if (paper.kind !== 'estimate') yield transactionText(billed(paper))
  for (const row of paidRows(read)) yield transactionText(paid(row, currency))
  for (const row of writtenOffRows(read)) yield transactionText(writtenOff(row, currency))
  for (const row of countRows(read)) yield transactionText(counted(row, currency))
}
