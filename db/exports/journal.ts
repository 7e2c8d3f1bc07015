import { sql } from 'drizzle-orm'
import { accountPart, journalHead, type Transaction, transactionText } from '../../core/exports/journal.ts'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { CreditNoteContents, InvoiceContents } from '../../core/papers/contents.ts'
import { type LineKind, lineKinds } from '../../core/pricing/kinds/index.ts'
import { type PaymentMethod, paymentMethods } from '../../core/vocabulary/work.ts'
import { byId } from '../by-id.ts'
import type { Read } from '../ledger.ts'
import { readSettings } from '../settings.ts'
import { pricedPapers } from './money.ts'

/** What the owners owe; below nothing, what the shop holds for them. */
const owedAccount = 'assets:owed by owners'
const receivedAccount = (method: PaymentMethod) => `assets:received:${method}`
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

interface PaidRow {
  readonly id: number
  readonly on: string
  readonly owner: string
  readonly receipt: string | null
  readonly method: PaymentMethod
  readonly amount: Minor
}

const paidRows = (read: Read) =>
  byId((after, limit) =>
    read.all<PaidRow>(sql`
      SELECT p.id, p.on_date AS "on", o.name AS owner, d.number AS receipt, p.method, p.amount_minor AS amount
      FROM payments p JOIN owners o ON o.id = p.owner_id LEFT JOIN documents d ON d.id = p.receipt_id
      WHERE p.id > ${after} ORDER BY p.id LIMIT ${limit}`),
  )

const paid = ({ id, on, owner, receipt, method, amount }: PaidRow, currency: string): Transaction => ({
  on,
  code: receipt ?? `payment ${id}`,
  description: owner,
  currency,
  postings: [
    { account: receivedAccount(method), amount },
    { account: owedAccount, amount: negative(amount) },
  ],
})

function accounts(read: Read): string[] {
  const taxes = read.all<{ code: string; rate: string }>(
    sql`SELECT DISTINCT code, rate FROM document_taxes WHERE code <> '' ORDER BY code, rate`,
  )
  return [
    owedAccount,
    ...paymentMethods.map(receivedAccount),
    ...(Object.keys(lineKinds) as LineKind[]).map(incomeAccount),
    incomeAccount(null),
    ...new Set(taxes.map(taxAccount)),
  ]
}

function currencies(read: Read, own: string): string[] {
  const used = read.all<{ currency: string }>(sql`SELECT DISTINCT currency FROM documents ORDER BY currency`)
  return [...new Set([own, ...used.map(({ currency }) => currency)])]
}

/** The shop's books as a plain-text journal, piece by piece: every invoice, credit note and payment one transaction. */
export function* journal(read: Read): Generator<string> {
  const { currency } = readSettings(read).place
  yield journalHead(currencies(read, currency), accounts(read))
  for (const paper of pricedPapers(read)) if (paper.kind !== 'estimate') yield transactionText(billed(paper))
  for (const row of paidRows(read)) yield transactionText(paid(row, currency))
}
