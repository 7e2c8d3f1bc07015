import { and, eq, isNull } from 'drizzle-orm'
import { type Minor, minor, minorText } from '../../core/money/minor.ts'
import type { InvoiceContents, PaperPayment } from '../../core/papers/contents.ts'
import type { Settings } from '../../core/shop/settings.ts'
import { isWithoutOrder } from '../../core/standing/stages.ts'
import type { Read, Write } from '../file/ledger.ts'
import { refuse } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { verb } from '../rows/verb.ts'
import { limitsOf } from '../rules/agreed-limit.ts'
import { repairBalance } from '../rules/balance.ts'
import { issueDay } from '../rules/book-day.ts'
import { type RepairRow, repairOpenTo } from '../rules/facts.ts'
import { issue, paperHead } from '../rules/issue.ts'
import type { LineEntry } from '../rules/line-entry.ts'
import { pricedLines } from '../rules/price-lines.ts'
import { settleMoney } from '../rules/settled-taxes.ts'
import { payments } from '../schema/index.ts'

/** Every payment on the repair so far, in order: what of it an earlier invoice took was given free when that was credited. */
const paymentsBefore = (read: Read, repairId: number): PaperPayment[] =>
  read
    .select({ on: payments.onDate, method: payments.method, amount: payments.amountMinor })
    .from(payments)
    .where(eq(payments.repairId, repairId))
    .orderBy(payments.id)
    .all()

/** Refuses a bill above what the owner agreed to, and the shop's margin on it where there is one. */
function refuseAboveLimit(tx: Write, repair: RepairRow, total: Minor, settings: Settings): void {
  const { currency } = settings.place
  const { agreedMinor, mostMinor } = limitsOf(tx, repair.id, settings)
  if (agreedMinor === null && isWithoutOrder(repair)) return
  if (total > (mostMinor ?? 0))
    refuse('limit.exceeded', 'lines', {
      total: minorText(total, currency),
      limit: minorText(agreedMinor ?? minor(0), currency),
    })
}

/** An invoice to be written. */
export interface InvoiceEntry {
  readonly repairId: number
  readonly lines: readonly LineEntry[]
  readonly notes: string
  /** The day of issue; the day it is written where null. */
  readonly issuedOn: string | null
}

/** Writes the invoice of a repair that is ready, from its lines; deposits paid before count towards it. */
export const writeInvoice = verb('accounts.invoice', (tx, input: InvoiceEntry, doing) => {
  const settings = readSettings(tx)
  const repair = repairOpenTo(tx, input.repairId, 'invoice')
  const issuedOn = issueDay(tx, settings, doing, 'invoice', input.issuedOn)
  const held = minor(-repairBalance(tx, repair.id).due)
  const sums = pricedLines(tx, repair, input.lines, settings, minorText(held, settings.place.currency))
  refuseAboveLimit(tx, repair, sums.priced.taxInclusive, settings)
  const contents: Omit<InvoiceContents, 'number'> = {
    ...paperHead(tx, settings, issuedOn, { ownerId: repair.ownerId, repair }),
    kind: 'invoice',
    ...sums,
    payments: paymentsBefore(tx, repair.id),
    ...(input.notes ? { notes: input.notes } : {}),
  }
  const document = issue(tx, doing, { contents, ownerId: repair.ownerId, repairId: repair.id })
  tx.update(payments)
    .set({ invoiceId: document.id })
    .where(and(eq(payments.repairId, repair.id), isNull(payments.invoiceId)))
    .run()
  settleMoney(tx, repair.id, doing.at)
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
})
