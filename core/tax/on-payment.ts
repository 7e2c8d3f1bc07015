import { apportion } from '../money/apportion.ts'
import { divRound } from '../money/div-round.ts'
import { type Minor, minor } from '../money/minor.ts'
import { addedUp, type TaxRow, turned } from './rows.ts'

/** An invoice or credit note: when it was issued, what it comes to with tax, and its tax. */
export interface Billed {
  readonly on: string
  readonly total: Minor
  readonly rows: readonly TaxRow[]
}

/** Money received (positive) or given back (negative). */
export interface Paid {
  readonly on: string
  readonly amount: Minor
}

/** What was billed and paid for one repair. */
export interface Account {
  readonly billed: readonly Billed[]
  readonly paid: readonly Paid[]
}

const sum = (amounts: readonly Minor[]): Minor => minor(amounts.reduce((all, amount) => all + amount, 0))

/**
 * The part of `rows` that `paid` out of `total` settles. The paid amount is shared out over the taxes and the amount
 * without tax by largest remainder (core/money/apportion.ts), so that all shares add up to it, each is within a minor unit
 * of its exact value, and the whole total paid settles exactly the whole tax. Nothing is settled of a total of nothing or
 * less; money beyond the total, or before there is one, settles nothing yet.
 */
export function taxSettled(rows: readonly TaxRow[], total: Minor, paid: Minor): TaxRow[] {
  const counted = BigInt(Math.max(0, Math.min(paid, total)))
  if (counted === 0n) return []
  if (counted === BigInt(total)) return [...rows]
  const whole = BigInt(total)
  const withoutTax = minor(total - sum(rows.map(row => row.tax)))
  const exact = [...rows.map(row => row.tax), withoutTax].map(part => ({
    n: BigInt(part) * counted,
    d: whole,
  }))
  const shares = apportion(counted, exact)
  return rows.map((row, i) => ({
    ...row,
    tax: minor(Number(shares[i] ?? 0n)),
    taxable: minor(Number(divRound(BigInt(row.taxable) * counted, whole, 'half-up'))),
  }))
}

function settledBy({ billed, paid }: Account, day: string): TaxRow[] {
  const documents = billed.filter(({ on }) => on <= day)
  const rows = addedUp(documents.flatMap(document => document.rows))
  return taxSettled(
    rows,
    sum(documents.map(({ total }) => total)),
    sum(paid.filter(({ on }) => on <= day).map(({ amount }) => amount)),
  )
}

/** The tax to account for on one day. */
export interface DayTax {
  readonly on: string
  readonly rows: readonly TaxRow[]
}

/**
 * The tax to account for, day by day, where tax is due with the payment: what the money received up to a day settles of what was
 * billed by then, less what it settled before. So a deposit counts on the day its invoice is issued (before, nothing says what it
 * is taxed at), a refund or a credit note takes back what was counted, and no later entry changes an earlier day.
 */
export function taxByDay(account: Account): DayTax[] {
  const days = [...new Set([...account.billed, ...account.paid].map(({ on }) => on))].sort()
  let before: readonly TaxRow[] = []
  return days.map(on => {
    const settled = settledBy(account, on)
    const rows = addedUp([...settled, ...turned(before)])
    before = settled
    return { on, rows: rows.filter(({ taxable, tax }) => taxable !== 0 || tax !== 0) }
  })
}
