import { and, eq, isNull } from 'drizzle-orm'
import { gather } from '../../core/checked.ts'
import { type Minor, minor, minorText } from '../../core/money/minor.ts'
import type {
  CreditNoteContents,
  InvoiceContents,
  PaperContents,
  PaperLine,
  PaperPayment,
  ReceiptContents,
} from '../../core/papers/contents.ts'
import { authorisedTotal } from '../../core/pricing/authorised.ts'
import { priced } from '../../core/pricing/price.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { PaymentMethod } from '../../core/vocabulary/work.ts'
import { agreedLimit } from '../agreed-limit.ts'
import { repairBalance } from '../balance.ts'
import { accepted, amountIn } from '../checked-in.ts'
import { type RepairRow, repairOpenTo, repairRow, settle } from '../facts.ts'
import { type DocumentRow, dayOfDoing, issue, paperHead } from '../issue.ts'
import type { Read, Write } from '../ledger.ts'
import { type LineEntry, pricedLines } from '../price-lines.ts'
import { known, Refusal, refuse } from '../refusal.ts'
import { documents, payments } from '../schema/index.ts'
import { readSettings } from '../settings.ts'
import { type Doing, verb } from '../verb.ts'

/** The document, or a refusal. */
export const documentRow = (read: Read, id: number, field = 'documentId'): DocumentRow =>
  known(read.select().from(documents).where(eq(documents.id, id)).get(), 'document.unknown', field)

/** What a document says, as it was frozen. */
export const frozenContents = (row: DocumentRow): PaperContents => JSON.parse(row.contents) as PaperContents

function paymentsBefore(read: Read, repairId: number): PaperPayment[] {
  return read
    .select()
    .from(payments)
    .where(and(eq(payments.repairId, repairId), isNull(payments.invoiceId)))
    .orderBy(payments.id)
    .all()
    .map(({ onDate, method, amountMinor }) => ({ on: onDate, method, amount: amountMinor }))
}

/** Refuses a bill above what the owner agreed to and the shop's margin on it. */
function refuseAboveLimit(tx: Write, repair: RepairRow, total: Minor, settings: Settings): void {
  const { currency } = settings.place
  const agreed = agreedLimit(tx, repair.id)
  if (agreed === null && (repair.covered || repair.estimateOnly || repair.stage === 'declined')) return
  const most = authorisedTotal(agreed ?? minor(0), settings.estimate, currency)
  if (!most.ok) throw new Refusal(most.problems)
  if (total > most.value)
    refuse('limit.exceeded', 'lines', {
      total: minorText(total, currency),
      limit: minorText(agreed ?? minor(0), currency),
    })
}

/** Writes the invoice of a repair that is ready, from its lines; deposits paid before count towards it. */
export const writeInvoice = verb(
  'accounts.invoice',
  (tx, input: { repairId: number; lines: readonly LineEntry[]; notes: string }, doing) => {
    const settings = readSettings(tx)
    const repair = repairOpenTo(tx, input.repairId, 'invoice')
    const before = paymentsBefore(tx, repair.id)
    const paid = minor(before.reduce((sum, payment) => sum + payment.amount, 0))
    const sums = pricedLines(tx, repair, input.lines, settings, minorText(paid, settings.place.currency))
    refuseAboveLimit(tx, repair, sums.priced.taxInclusive, settings)
    const contents: Omit<InvoiceContents, 'number'> = {
      ...paperHead(tx, settings, dayOfDoing(doing, settings), { ownerId: repair.ownerId, repair }),
      kind: 'invoice',
      ...sums,
      payments: before,
      ...(input.notes ? { notes: input.notes } : {}),
    }
    const document = issue(tx, doing, { contents, ownerId: repair.ownerId, repairId: repair.id })
    tx.update(payments)
      .set({ invoiceId: document.id })
      .where(and(eq(payments.repairId, repair.id), isNull(payments.invoiceId)))
      .run()
    settle(tx, repair.id, doing.at)
    return {
      subject: { kind: 'document', id: document.id },
      result: {
        id: document.id,
        number: document.number,
        totalMinor: sums.priced.taxInclusive,
        taxMinor: sums.priced.tax,
        dueMinor: sums.priced.due,
      },
    }
  },
)

/** Money that comes in for a repair: a deposit before the invoice, a payment after it. */
export interface Pay {
  readonly repairId: number
  /** In major units. */
  readonly amount: string
  readonly method: PaymentMethod
  readonly reference: string
  /** Cash laid down, where change is given. */
  readonly tendered: string | null
}

interface Money {
  readonly amount: Minor
  readonly tendered: Minor | null
}

/** The sums of a payment in minor units; an amount of nothing, or less laid down than paid, is refused. */
function moneyOf(settings: Settings, input: Pay): Money {
  const money = accepted(
    gather({
      amount: amountIn(settings, input.amount, 'amount'),
      tendered: amountIn(settings, input.tendered, 'tendered'),
    }),
  )
  const { tendered } = money
  const amount = money.amount ?? minor(0)
  if (amount === 0) refuse('payment.zero', 'amount')
  if (tendered !== null && tendered < amount) refuse('payment.tooLittle', 'tendered')
  return { amount, tendered }
}

const latestInvoice = (read: Read, repairId: number): DocumentRow | undefined =>
  read
    .select()
    .from(documents)
    .where(and(eq(documents.repairId, repairId), eq(documents.kind, 'invoice')))
    .orderBy(documents.id)
    .all()
    .at(-1)

function receive(tx: Write, doing: Doing, repair: RepairRow, input: Omit<Pay, keyof Money> & Money) {
  const settings = readSettings(tx)
  const onDate = dayOfDoing(doing, settings)
  const invoice = latestInvoice(tx, repair.id)
  const { id } = tx
    .insert(payments)
    .values({
      at: doing.at,
      onDate,
      personId: doing.personId,
      ownerId: repair.ownerId,
      repairId: repair.id,
      invoiceId: invoice?.id ?? null,
      method: input.method,
      amountMinor: input.amount,
      reference: input.reference,
    })
    .returning()
    .get()
  const { due } = repairBalance(tx, repair.id)
  const contents: Omit<ReceiptContents, 'number'> = {
    ...paperHead(tx, settings, onDate, { ownerId: repair.ownerId, repair }),
    kind: 'receipt',
    method: input.method,
    amount: input.amount,
    ...(input.tendered === null
      ? {}
      : { tendered: input.tendered, change: minor(input.tendered - input.amount) }),
    ...(input.reference ? { reference: input.reference } : {}),
    towards: invoice ? 'invoice' : 'deposit',
    ...(invoice ? { invoiceNumber: invoice.number } : {}),
    balance: due,
  }
  const receipt = issue(tx, doing, { contents, ownerId: repair.ownerId, repairId: repair.id })
  tx.update(payments).set({ receiptId: receipt.id }).where(eq(payments.id, id)).run()
  settle(tx, repair.id, doing.at)
  return {
    subject: { kind: 'document' as const, id: receipt.id },
    result: { id, receiptId: receipt.id, number: receipt.number, dueMinor: due },
  }
}

/** Takes a payment and issues its receipt. After the invoice nothing above what is owed is taken. */
export const takePayment = verb('accounts.pay', (tx, input: Pay, doing) => {
  const settings = readSettings(tx)
  const repair = repairRow(tx, input.repairId)
  const money = moneyOf(settings, input)
  const { due } = repairBalance(tx, repair.id)
  if (latestInvoice(tx, repair.id) && money.amount > due)
    refuse('payment.moreThanOwed', 'amount', {
      due: minorText(minor(Math.max(due, 0)), settings.place.currency),
    })
  return receive(tx, doing, repair, { ...input, ...money })
})

/** Gives money back, at most what the shop holds above what is billed; the receipt says so with a minus. */
export const refund = verb('accounts.refund', (tx, input: Pay, doing) => {
  const settings = readSettings(tx)
  const repair = repairRow(tx, input.repairId)
  const money = moneyOf(settings, input)
  const held = minor(-repairBalance(tx, repair.id).due)
  if (money.amount > held)
    refuse('payment.moreThanHeld', 'amount', {
      held: minorText(minor(Math.max(held, 0)), settings.place.currency),
    })
  return receive(tx, doing, repair, { ...input, tendered: null, amount: minor(-money.amount) })
})

/** The quantity with its sign turned, as text. */
const mirrored = (quantity: string): string => (quantity.startsWith('-') ? quantity.slice(1) : `-${quantity}`)

function mirrorLines(invoice: InvoiceContents): { lines: PaperLine[]; priced: InvoiceContents['priced'] } {
  const lines = invoice.lines.map(line => ({
    ...line,
    quantity: mirrored(line.quantity),
    net: minor(-line.net),
  }))
  const result = priced({ currency: invoice.currency, tax: invoice.tax, lines })
  if (!result.ok) throw new Refusal(result.problems)
  return { lines, priced: result.value }
}

/** Credits an invoice in full: the correction of a document that itself never changes. */
export const creditInvoice = verb(
  'accounts.credit',
  (tx, input: { invoiceId: number; reason: string }, doing) => {
    const settings = readSettings(tx)
    const row = documentRow(tx, input.invoiceId, 'invoiceId')
    const invoice = frozenContents(row)
    if (invoice.kind !== 'invoice' || row.repairId === null)
      return refuse('document.notAnInvoice', 'invoiceId')
    const earlier = tx
      .select({ id: documents.id })
      .from(documents)
      .where(eq(documents.correctsId, row.id))
      .get()
    if (earlier) refuse('document.credited', 'invoiceId')
    const repair = repairRow(tx, row.repairId)
    const contents: Omit<CreditNoteContents, 'number'> = {
      ...paperHead(tx, settings, dayOfDoing(doing, settings), { ownerId: row.ownerId, repair }),
      kind: 'credit-note',
      ...mirrorLines(invoice),
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
    settle(tx, repair.id, doing.at)
    return {
      subject: { kind: 'document', id: document.id },
      result: { id: document.id, number: document.number, totalMinor: document.totalMinor },
    }
  },
)
