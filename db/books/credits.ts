import { type CreditChoice, creditOf, isCredited } from '../../core/accounts/credit.ts'
import { minor, minorText } from '../../core/money/minor.ts'
import type { CreditNoteContents, InvoiceContents } from '../../core/papers/contents.ts'
import type { Read } from '../file/ledger.ts'
import { refuse } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { verb } from '../rows/verb.ts'
import { repairBalance } from '../rules/balance.ts'
import { issueDay } from '../rules/book-day.ts'
import { accepted } from '../rules/checked-in.ts'
import { creditsOf } from '../rules/credits.ts'
import { type RepairRow, repairRow } from '../rules/facts.ts'
import { documentRow, frozenContents } from '../rules/frozen-papers.ts'
import { type DocumentRow, issue, paperHead } from '../rules/issue.ts'
import { settleMoney } from '../rules/settled-taxes.ts'

/** What is to be taken back of an invoice. */
export interface CreditEntry {
  readonly invoiceId: number
  /** Of which lines how much; everything that is left where null. */
  readonly lines: readonly CreditChoice[] | null
  readonly reason: string
  /** The day of issue; the day it is written where null. */
  readonly issuedOn: string | null
}

interface Billed {
  readonly row: DocumentRow
  readonly invoice: InvoiceContents
  readonly repair: RepairRow
}

function billed(read: Read, invoiceId: number): Billed {
  const row = documentRow(read, invoiceId, 'invoiceId')
  const invoice = frozenContents(row)
  if (invoice.kind !== 'invoice' || row.repairId === null) return refuse('document.notAnInvoice', 'invoiceId')
  return { row, invoice, repair: repairRow(read, row.repairId) }
}

/** Refuses to credit what was given up already: that would make it money held for the owner. */
function refuseWrittenOff(read: Read, { repair, invoice: { currency } }: Billed, creditMinor: number): void {
  const { billed: total, writtenOff } = repairBalance(read, repair.id)
  if (total + creditMinor < writtenOff)
    refuse('credit.writtenOff', 'lines', { writtenOff: minorText(minor(writtenOff), currency) })
}

/** Credits an invoice in full or in part: the correction of a document that itself never changes. */
export const creditInvoice = verb('accounts.credit', (tx, input: CreditEntry, doing) => {
  const settings = readSettings(tx)
  const bill = billed(tx, input.invoiceId)
  const { row, invoice, repair } = bill
  const before = creditsOf(tx, row.id)
  if (isCredited(invoice, before)) refuse('document.credited', 'invoiceId')
  const issuedOn = issueDay(tx, settings, doing, 'credit-note', input.issuedOn)
  const credit = accepted(creditOf(invoice, before, input.lines))
  refuseWrittenOff(tx, bill, credit.priced.taxInclusive)
  const contents: Omit<CreditNoteContents, 'number'> = {
    ...paperHead(tx, settings, issuedOn, { ownerId: row.ownerId, repair }),
    kind: 'credit-note',
    ...credit,
    tax: invoice.tax,
    currency: invoice.currency,
    invoice: { number: row.number, issuedOn: row.issuedOn },
    reason: input.reason,
  }
  const document = issue(tx, doing, {
    contents,
    ownerId: row.ownerId,
    repairId: repair.id,
    correctsId: row.id,
  })
  settleMoney(tx, repair.id, doing.at)
  return {
    subject: { kind: 'document', id: document.id },
    result: { id: document.id, number: document.number, totalMinor: document.totalMinor },
  }
})
