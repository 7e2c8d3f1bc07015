import { gather } from '../../core/checked.ts'
import { restOf } from '../../core/money/cash.ts'
import { type Minor, minor, minorText } from '../../core/money/minor.ts'
import { type Problem, problem } from '../../core/problems.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { PaymentMethod } from '../../core/vocabulary/work.ts'
import type { Read } from '../file/ledger.ts'
import { refuse, refuseAny } from '../rows/refusal.ts'
import { ownerRow } from '../rows/register-rows.ts'
import { readSettings } from '../rows/settings.ts'
import { verb } from '../rows/verb.ts'
import { accountHeld, repairBalance } from '../rules/balance.ts'
import { bookDay } from '../rules/book-day.ts'
import { accepted, amountIn } from '../rules/checked-in.ts'
import { type RepairRow, repairRow } from '../rules/facts.ts'
import { aboveQuoted } from '../rules/quoted.ts'
import { handed, latestInvoice, receive } from '../rules/receipts.ts'
import { settleMoney } from '../rules/settled-taxes.ts'

/** Money that is given or taken, as it is typed. */
export interface MoneyEntry {
  /** In major units. */
  readonly amount: string
  readonly method: PaymentMethod
  readonly reference: string
  /** The day it changed hands; the day it is entered where null. */
  readonly onDate: string | null
}

/** Money that comes in for a repair: a deposit before the invoice, a payment after it. */
export interface Pay extends MoneyEntry {
  readonly repairId: number
  /** Cash laid down, where change is given. */
  readonly tendered: string | null
  /** Whether what is above the debt goes to the owner's account; otherwise it is refused. */
  readonly restToAccount: boolean
}

/** An amount typed in major units, more than nothing. */
function someAmount(settings: Settings, text: string): Minor {
  const amount = accepted(amountIn(settings, text, 'amount')) ?? minor(0)
  return amount === 0 ? refuse('payment.zero', 'amount') : amount
}

const text = (amount: Minor, settings: Settings): string => minorText(amount, settings.place.currency)

const atLeastNothing = (amount: number): Minor => minor(Math.max(amount, 0))

interface Paying {
  readonly amount: Minor
  readonly tendered: Minor | null
  /** What of it is more than is owed. */
  readonly rest: Minor
}

function payProblems(
  read: Read,
  settings: Settings,
  repair: RepairRow,
  input: Pay,
  paying: Paying,
): Problem[] {
  const { amount, tendered, rest } = paying
  const { due } = repairBalance(read, repair.id)
  const byAccount = input.method === 'account'
  const held = byAccount ? accountHeld(read, repair.ownerId) : amount
  return [
    ...(rest > 0 && (byAccount || !input.restToAccount)
      ? [
          problem('payment.moreThanOwed', 'amount', {
            due: text(atLeastNothing(due), settings),
            rest: text(rest, settings),
          }),
        ]
      : []),
    ...(amount > held ? [problem('account.notEnough', 'amount', { held: text(held, settings) })] : []),
    ...(tendered !== null && tendered < amount ? [problem('payment.tooLittle', 'tendered')] : []),
  ]
}

/**
 * Takes a payment and issues its receipt. After the invoice nothing above what is owed is taken, unless the rest goes to the
 * owner's account; by the method `account` it is paid from what the shop holds there.
 */
export const takePayment = verb('accounts.pay', (tx, input: Pay, doing) => {
  const settings = readSettings(tx)
  const repair = repairRow(tx, input.repairId)
  const onDate = bookDay(tx, settings, doing, input.onDate)
  const typed = accepted(
    gather({
      amount: amountIn(settings, input.amount, 'amount'),
      tendered: amountIn(settings, input.tendered, 'tendered'),
    }),
  )
  const billed = latestInvoice(tx, repair.id) !== undefined
  const open = billed ? atLeastNothing(repairBalance(tx, repair.id).due) : minor(0)
  const cash = handed(settings, input.method, typed.amount || refuse('payment.zero', 'amount'), open)
  const rest = billed ? restOf(cash, open) : minor(0)
  refuseAny(payProblems(tx, settings, repair, input, { amount: cash.amount, tendered: typed.tendered, rest }))
  const result = receive(tx, doing, settings, {
    ...cash,
    ownerId: repair.ownerId,
    repair,
    onDate,
    method: input.method,
    reference: input.reference,
    tendered: typed.tendered,
    toAccount: rest,
  })
  settleMoney(tx, repair.id, doing.at)
  return {
    subject: { kind: 'document', id: result.receiptId },
    result: { ...result, aboveQuotedMinor: billed ? minor(0) : aboveQuoted(tx, repair.id) },
  }
})

/** Money given back on a repair. */
export type Refund = MoneyEntry & { readonly repairId: number }

function refuseAboveHeld(settings: Settings, given: Minor, held: Minor): void {
  if (given > held) refuse('payment.moreThanHeld', 'amount', { held: text(atLeastNothing(held), settings) })
}

/**
 * Gives money back, at most what the shop holds on the repair above what is billed; the receipt says so with a minus. By the
 * method `account` it goes to the owner's account instead.
 */
export const refund = verb('accounts.refund', (tx, input: Refund, doing) => {
  const settings = readSettings(tx)
  const repair = repairRow(tx, input.repairId)
  const onDate = bookDay(tx, settings, doing, input.onDate)
  const { due } = repairBalance(tx, repair.id)
  const cash = handed(
    settings,
    input.method,
    minor(-someAmount(settings, input.amount)),
    minor(Math.min(due, 0)),
  )
  refuseAboveHeld(settings, minor(-cash.amount - cash.rounding), minor(-due))
  const result = receive(tx, doing, settings, {
    ...cash,
    ownerId: repair.ownerId,
    repair,
    onDate,
    method: input.method,
    reference: input.reference,
    tendered: null,
    toAccount: minor(0),
  })
  settleMoney(tx, repair.id, doing.at)
  return { subject: { kind: 'document', id: result.receiptId }, result }
})

/** Money paid out of an owner's account. */
export type PayBack = MoneyEntry & { readonly ownerId: number }

/** Pays out what the shop holds on an owner's account, at most all of it. */
export const payBack = verb('accounts.payBack', (tx, input: PayBack, doing) => {
  const settings = readSettings(tx)
  const owner = ownerRow(tx, input.ownerId)
  const onDate = bookDay(tx, settings, doing, input.onDate)
  const held = accountHeld(tx, owner.id)
  const cash = handed(settings, input.method, minor(-someAmount(settings, input.amount)), minor(-held))
  refuseAboveHeld(settings, minor(-cash.amount - cash.rounding), held)
  const result = receive(tx, doing, settings, {
    ...cash,
    ownerId: owner.id,
    onDate,
    method: input.method,
    reference: input.reference,
    tendered: null,
    toAccount: minor(0),
  })
  return { subject: { kind: 'document', id: result.receiptId }, result }
})
