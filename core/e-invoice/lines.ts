import { type Decimal, decimalOf, decimalText, subtractDecimals } from '../decimal/decimal.ts'
import type { MinorDigits } from '../money/currency.ts'
import { type Minor, minor, minorText, parseMinorRounded } from '../money/minor.ts'
import type { PaperLine } from '../papers/contents.ts'
import { quantityUnitOf } from '../papers/quantity-unit.ts'
import type { QuantityUnit } from '../pricing/kinds/kind.ts'
import type { Adjustment, Category, InvoiceLine } from './model.ts'

/** UN/ECE Recommendation 20: hour, piece, one. */
const unitCodes: Record<QuantityUnit, string> = { hour: 'HUR', piece: 'H87', job: 'C62' }

/** How a document's lines are turned into the standard's. */
export interface LineRules {
  readonly currency: string
  readonly digits: MinorDigits
  /** Prices on the paper contain the tax. */
  readonly inclusive: boolean
  /** −1 on a credit note, whose lines are mirrored. */
  readonly sign: 1 | -1
  /** What the line's own allowances and charges are called. */
  readonly reason: string
}

const zero: Decimal = { units: 0n, scale: 0 }
const decimal = (text: string | undefined): Decimal => decimalOf(text ?? '0') ?? zero
const timesSign = ({ units, scale }: Decimal, sign: 1 | -1): Decimal => ({
  units: units * BigInt(sign),
  scale,
})
const size = ({ units, scale }: Decimal): Decimal => ({ units: units < 0n ? -units : units, scale })

/** An allowance (negative) or charge (positive) as the standard writes it; nothing for nothing. */
export const adjustment = (amount: number, reason: string): Adjustment[] =>
  amount === 0 ? [] : [{ charge: amount > 0, amount: minor(Math.abs(amount)), reason }]

type Priced = Pick<InvoiceLine, 'quantity' | 'price' | 'per' | 'adjustments'>

/** The line's own price: its unit price less the discount on it, and its allowances and charges. */
function ownPrice(line: PaperLine, { digits, sign, reason }: LineRules): Priced {
  const amount = (text: string | undefined): number => {
    const read = parseMinorRounded(text ?? '0', digits, 'lines')
    return read.ok ? read.value : 0
  }
  return {
    quantity: decimalText(timesSign(decimal(line.quantity), sign)),
    price: decimalText(subtractDecimals(decimal(line.unit), decimal(line.unitDiscount))),
    per: decimalText(decimal(line.per ?? '1')),
    adjustments: [
      ...adjustment(sign * amount(line.charge), reason),
      ...adjustment(-sign * amount(line.allowance), reason),
    ],
  }
}

/**
 * The price of a line whose price on the paper contains the tax: the net of the whole quantity, for the whole quantity. No
 * unit price without tax has few enough places to come to the same net.
 */
function priceOfWhole(line: PaperLine, net: Minor, { currency }: LineRules): Priced {
  const whole = size(decimal(line.quantity))
  const per = whole.units === 0n ? { units: 1n, scale: 0 } : whole
  const price = decimalText(decimal(minorText(minor(Math.abs(net)), currency)))
  const quantity = net === 0 ? decimal(line.quantity) : timesSign(per, net < 0 ? -1 : 1)
  return { quantity: decimalText(quantity), price, per: decimalText(per), adjustments: [] }
}

/** A line of the paper as the standard's (BG-25); `net` is without tax and signed as on the e-invoice. */
export const invoiceLine = (
  line: PaperLine,
  net: Minor,
  category: Category,
  rules: LineRules,
): InvoiceLine => ({
  name: line.description,
  unitCode: unitCodes[quantityUnitOf(line)],
  net,
  category,
  ...(rules.inclusive ? priceOfWhole(line, net, rules) : ownPrice(line, rules)),
})
