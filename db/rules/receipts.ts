import { and, desc, eq, inArray } from 'drizzle-orm'
import { type Cash, changesHands } from '../../core/money/cash.ts'
import { type Minor, minor, parseMinor } from '../../core/money/minor.ts'
import type { ReceiptContents } from '../../core/papers/contents.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { PaymentMethod } from '../../core/vocabulary/work.ts'
import type { Read, Write } from '../file/ledger.ts'
import { askedId, question } from '../rows/question.ts'
import { refuse } from '../rows/refusal.ts'
import type { Doing } from '../rows/verb.ts'
import { documents, payments, writeOffs } from '../schema/index.ts'
import { accountHeld, repairBalance } from './balance.ts'
import { accepted } from './checked-in.ts'
import type { RepairRow } from './facts.ts'
import { type DocumentRow, dayOfDoing, issue, paperHead } from './issue.ts'

const invoices = question(read =>
  read
    .select()
    .from(documents)
    .where(and(eq(documents.repairId, askedId), eq(documents.kind, 'invoice')))
    .orderBy(desc(documents.id))
    .limit(1),
)

/** The invoice of a repair that payments now go to; none before it is billed. */
export const latestInvoice = (read: Read, repairId: number): DocumentRow | undefined =>
  invoices(read).get({ id: repairId })

/** The smallest amount this shop pays in cash, in minor units; 0 where it rounds nothing. */
export const cashStep = ({ cash, place }: Settings): Minor =>
  accepted(parseMinor(cash.step, place.currency, 'cash.step'))

/** What changes hands for `amount` where `open` is to be paid, by the method's rules; refuses cash that coins cannot pay. */
export function handed(settings: Settings, method: PaymentMethod, amount: Minor, open: Minor): Cash {
  const cash = changesHands(method === 'cash', amount, open, cashStep(settings))
  if (cash === null) return refuse('payment.notInCash', 'amount', { step: settings.cash.step })
  if (method === 'cash' && cash.amount === 0)
    return refuse('payment.belowCash', 'amount', { step: settings.cash.step })
  return cash
}

/** Money that has changed hands (given back when below nothing), for a repair or, without one, on the owner's account. */
export interface Movement extends Cash {
  readonly ownerId: number
  readonly repair?: RepairRow
  readonly onDate: string
  readonly method: PaymentMethod
  readonly reference: string
  readonly tendered: Minor | null
  /** What of it goes on to the owner's account. */
  readonly toAccount: Minor
}

function enterPayment(tx: Write, doing: Doing, movement: Movement, invoice: DocumentRow | undefined): number {
  const { ownerId, repair, onDate, method, amount, reference, rounding, toAccount } = movement
  const about = {
    at: doing.at,
    onDate,
    personId: doing.personId,
    ownerId,
    repairId: repair?.id ?? null,
  }
  const entry = { ...about, invoiceId: invoice?.id ?? null, reference }
  const enter = (values: { method: PaymentMethod; amountMinor: Minor }) =>
    tx
      .insert(payments)
      .values({ ...entry, ...values })
      .returning()
      .get().id
  const id = enter({ method, amountMinor: amount })
  if (rounding !== 0)
    tx.insert(writeOffs)
      .values({ ...about, paymentId: id, kind: 'rounding', amountMinor: rounding })
      .run()
  if (toAccount !== 0) enter({ method: 'account', amountMinor: minor(-toAccount) })
  return id
}

const left = (read: Read, { repair, ownerId }: Movement): Minor =>
  repair ? repairBalance(read, repair.id).due : minor(-accountHeld(read, ownerId))

function receiptContents(
  tx: Write,
  settings: Settings,
  doing: Doing,
  movement: Movement,
  invoice: DocumentRow | undefined,
): Omit<ReceiptContents, 'number'> {
  const { repair, ownerId, method, amount, rounding, tendered, toAccount, reference, onDate } = movement
  const issuedOn = dayOfDoing(doing, settings)
  return {
    ...paperHead(tx, settings, issuedOn, { ownerId, ...(repair ? { repair } : {}) }),
    kind: 'receipt',
    method,
    amount,
    ...(tendered === null ? {} : { tendered, change: minor(tendered - amount) }),
    ...(reference ? { reference } : {}),
    towards: repair ? (invoice ? 'invoice' : 'deposit') : 'account',
    ...(invoice ? { invoiceNumber: invoice.number } : {}),
    ...(toAccount === 0 ? {} : { toAccount }),
    ...(rounding === 0 ? {} : { rounding }),
    ...(onDate === issuedOn ? {} : { onDate }),
    balance: left(tx, movement),
  }
}

/** Enters money that changed hands and issues its receipt. */
export function receive(tx: Write, doing: Doing, settings: Settings, movement: Movement) {
  const { repair, ownerId } = movement
  const invoice = repair && latestInvoice(tx, repair.id)
  const id = enterPayment(tx, doing, movement, invoice)
  const contents = receiptContents(tx, settings, doing, movement, invoice)
  const receipt = issue(tx, doing, { contents, ownerId, repairId: repair?.id ?? null })
  tx.update(payments)
    .set({ receiptId: receipt.id })
    .where(inArray(payments.id, movement.toAccount === 0 ? [id] : [id, id + 1]))
    .run()
  return {
    id,
    receiptId: receipt.id,
    number: receipt.number,
    dueMinor: contents.balance,
    amountMinor: movement.amount,
    changeMinor: contents.change ?? minor(0),
    toAccountMinor: movement.toAccount,
    billed: invoice !== undefined,
  }
}
