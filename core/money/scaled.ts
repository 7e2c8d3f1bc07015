import { type Decimal, tenTo } from '../decimal/decimal.ts'
import type { MinorDigits } from './currency.ts'
import { divRound } from './div-round.ts'

/** A price in major units × a quantity, in minor units, rounded half up once. */
export const times = (price: Decimal, quantity: Decimal, digits: MinorDigits): bigint =>
  divRound(price.units * quantity.units * tenTo(digits), tenTo(price.scale + quantity.scale), 'half-up')

/** So many percent of an amount in minor units, rounded half up. */
export const percentOf = (amount: bigint, percent: Decimal): bigint =>
  divRound(amount * percent.units, 100n * tenTo(percent.scale), 'half-up')
