import { gather, whenGood } from '../checked.ts'
import { type Decimal, parseDecimal, parsePositive, subtractDecimals, tenTo } from '../decimal/decimal.ts'
import type { MinorDigits } from '../money/currency.ts'
import { divRound } from '../money/div-round.ts'
import { parseMinorRounded, parseMoney } from '../money/minor.ts'
import { bad, type Checked, good, problem } from '../problems.ts'
import type { PriceLine } from './price-input.ts'

type Figures = Omit<PriceLine, 'kind' | 'taxes'>

/**
 * A line's amount in minor units: round((unit − unitDiscount) ÷ per × quantity) + charge − allowance, each part
 * rounded half up by itself (EN 16931 line formula). Problems: figures that are no decimals, `price.negativeUnit`,
 * `price.discountOverUnit`, `price.perNotPositive`.
 */
export function lineAmount(line: Figures, digits: MinorDigits, field: string): Checked<bigint> {
  const parts = gather({
    quantity: parseDecimal(line.quantity, `${field}.quantity`),
    unit: netUnit(line, field),
    per: parsePositive(line.per ?? '1', `${field}.per`),
    charge: parseMinorRounded(line.charge ?? '0', digits, `${field}.charge`),
    allowance: parseMinorRounded(line.allowance ?? '0', digits, `${field}.allowance`),
  })
  return whenGood(parts, ({ quantity, unit, per, charge, allowance }) =>
    good(extended(unit, per, quantity, digits) + BigInt(charge) - BigInt(allowance)),
  )
}

/** round(unit ÷ per × quantity) in minor units. */
function extended(unit: Decimal, per: Decimal, quantity: Decimal, digits: MinorDigits): bigint {
  const n = unit.units * quantity.units * tenTo(per.scale + digits)
  return divRound(n, per.units * tenTo(unit.scale + quantity.scale), 'half-up')
}

function netUnit(line: Figures, field: string): Checked<Decimal> {
  const parts = gather({
    unit: unitPrice(line.unit, `${field}.unit`),
    discount: unitPrice(line.unitDiscount ?? '0', `${field}.unitDiscount`),
  })
  return whenGood(parts, ({ unit, discount }) => {
    const net = subtractDecimals(unit, discount)
    return net.units < 0n ? bad([problem('price.discountOverUnit', `${field}.unitDiscount`)]) : good(net)
  })
}

/** A price or discount of one unit: never negative (EN 16931 BR-27, BR-28). */
const unitPrice = (text: string, field: string): Checked<Decimal> =>
  whenGood(parseMoney(text, field), price =>
    price.units < 0n ? bad([problem('price.negativeUnit', field)]) : good(price),
  )
