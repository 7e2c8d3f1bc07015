import { isNotNull, sql } from 'drizzle-orm'
import { type Minor, minorText } from '../../core/money/minor.ts'
import { priced } from '../../core/pricing/price.ts'
import type { PriceLine } from '../../core/pricing/price-input.ts'
import { lineTaxes, taxRules } from '../../core/shop/tax-rules.ts'
import type { Read } from '../file/ledger.ts'
import { refuse } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import type { PartRow } from '../rows/stock.ts'
import { outsideWork } from '../schema/index.ts'
import { limitsOf } from './agreed-limit.ts'
import { accepted } from './checked-in.ts'
import { agreedLines, estimatesOf, invoiceStart, wordsOf } from './estimates.ts'
import type { RepairRow } from './facts.ts'
import { partsUsedOn } from './parts-used.ts'

type Bill = NonNullable<ReturnType<typeof billAgreed>>

/** What the bill of a repair starts from now, and the most the owner's go-ahead lets it come to; nothing where nothing is agreed. */
function billAgreed(read: Read, repair: RepairRow) {
  const settings = readSettings(read)
  const { agreedMinor, mostMinor } = limitsOf(read, repair.id, settings)
  if (agreedMinor === null || mostMinor === null) return undefined
  const agreed = agreedLines(estimatesOf(read, repair, settings.place.currency), wordsOf(read, repair.id))
  const start = invoiceStart(agreed, partsUsedOn(read, repair.id), mostMinor, settings)
  return { settings, start, agreedMinor, mostMinor }
}

/** What the bill comes to, tax included, with more lines on it. */
function totalWith({ settings, start }: Bill, more: readonly PriceLine[]): Minor {
  const lines = [...start.agreed, ...start.used, ...more]
  const document = priced({ currency: settings.place.currency, tax: taxRules(settings.tax), lines })
  return accepted(document).taxInclusive
}

const refuseWith = (
  bill: Bill,
  code: 'limit.part' | 'limit.outside',
  field: string,
  more: readonly PriceLine[],
): never => {
  const { currency } = bill.settings.place
  return refuse(code, field, {
    total: minorText(totalWith(bill, more), currency),
    limit: minorText(bill.agreedMinor, currency),
    most: minorText(bill.mostMinor, currency),
  })
}

/** Refuses the use of a part, entered just before, that would take the bill beyond the most the go-ahead lets it come to. */
export function refuseUseBeyondLimit(read: Read, repair: RepairRow, part: PartRow): void {
  const bill = billAgreed(read, repair)
  const beyond = bill?.start.left.find(
    ({ line, reason }) => reason === 'beyond-limit' && line.partId === part.id,
  )
  if (bill && beyond) refuseWith(bill, 'limit.part', 'atShopsCost', [beyond.line])
}

/** Refuses outside work, entered just before, whose price would do so; an agreed line for work given out covers it. */
export function refuseOutsideBeyondLimit(read: Read, repair: RepairRow): void {
  const bill = billAgreed(read, repair)
  if (!bill || bill.start.agreed.some(({ kind }) => kind === 'outside')) return
  const { currency } = bill.settings.place
  const given = read
    .select({ price: outsideWork.priceMinor })
    .from(outsideWork)
    .where(sql`${outsideWork.repairId} = ${repair.id} AND ${isNotNull(outsideWork.priceMinor)}`)
    .all()
    .map(({ price }) => ({
      kind: 'outside' as const,
      quantity: '1',
      unit: minorText(price as Minor, currency),
      taxes: lineTaxes({ kind: 'outside' }, bill.settings.tax),
    }))
  if (totalWith(bill, given) > bill.mostMinor) refuseWith(bill, 'limit.outside', 'price', given)
}
