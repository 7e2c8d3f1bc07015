import { addDecimals, type Decimal, decimalText, parseDecimal } from '../decimal/decimal.ts'
import { currencyDigits, type Minor, minor } from '../money/minor.ts'
import type { PaperLine } from '../papers/contents.ts'
import { type PricedContents, priceInputOf } from '../papers/price-input.ts'
import { lineAmount } from '../pricing/line-amount.ts'
import { parsedDocument, taxableItems } from '../pricing/price.ts'
import type { TaxPart } from '../pricing/price-input.ts'
import { groupAmounts } from '../pricing/taxed.ts'
import type { Checked } from '../problems.ts'

/** What earlier credit notes have left of a line, with the line's own sign; the amount contains tax where prices do. */
export interface LineLeft {
  readonly quantity: string
  readonly amount: Minor
}

/** What a frozen paper says was read once already. */
function frozen<T>(checked: Checked<T>): T {
  if (checked.ok) return checked.value
  throw new RangeError(`a frozen paper cannot be read: ${checked.problems.map(p => p.field).join(', ')}`)
}

/** What a line comes to by its own figures. */
export const amountOf = (line: Omit<PaperLine, 'net'>, currency: string): Minor =>
  minor(Number(frozen(lineAmount(line, frozen(currencyDigits(currency)), 'line'))))

const quantityOf = ({ quantity }: Pick<PaperLine, 'quantity'>): Decimal =>
  frozen(parseDecimal(quantity, 'quantity'))

/** What credit notes so far have left of each line of an invoice. A credit note that does not say what it takes back mirrors the whole. */
export function linesLeft(invoice: PricedContents, credits: readonly PricedContents[]): LineLeft[] {
  const credited = credits.flatMap(({ lines }) =>
    lines.map((line, i) => ({ line, of: line.credits ?? { line: i, by: 'quantity' as const } })),
  )
  return invoice.lines.map((line, index) => {
    const own = credited.filter(({ of }) => of.line === index)
    const counted = own.filter(({ of }) => of.by === 'quantity').map(one => quantityOf(one.line))
    const amounts = own.map(one => amountOf(one.line, invoice.currency))
    return {
      quantity: decimalText(counted.reduce(addDecimals, quantityOf(line))),
      amount: minor(amounts.reduce<number>((sum, amount) => sum + amount, amountOf(line, invoice.currency))),
    }
  })
}

/** Each group of taxes with what is charged on it. */
const groupsOf = (contents: PricedContents) =>
  groupAmounts(taxableItems(frozen(parsedDocument(priceInputOf(contents)))), contents.tax).map(group => ({
    ...group,
    amount: minor(Number(group.amount)),
    tax: contents.priced.taxes.find(({ code, rate }) => code === group.code && rate === group.rate)?.tax ?? 0,
  }))

/** What of each tax an invoice bears, and what was taken back of it so far. */
export function taxParts(invoice: PricedContents, credits: readonly PricedContents[]): TaxPart[] {
  const credited = credits.flatMap(groupsOf)
  return groupsOf(invoice).map(({ code, rate, amount, tax }) => {
    const own = credited.filter(group => group.code === code && group.rate === rate)
    const before = (of: 'amount' | 'tax') => minor(own.reduce((sum: number, group) => sum - group[of], 0))
    return {
      code,
      rate,
      whole: { amount, tax: minor(tax) },
      before: { amount: before('amount'), tax: before('tax') },
    }
  })
}
