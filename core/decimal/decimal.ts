import { bad, type Checked, good, problem } from '../problems.ts'

/** An exact decimal number: `units` ÷ 10^`scale`. What a person typed, never a float. */
export interface Decimal {
  readonly units: bigint
  readonly scale: number
}

const plainDecimal = /^-?\d+(\.\d+)?$/
const longestText = 40

/**
 * The decimal a text stands for, or undefined: digits with at most one point and a leading minus, nothing else, at
 * most 40 characters.
 */
export function decimalOf(text: string): Decimal | undefined {
  if (text.length > longestText || !plainDecimal.test(text)) return undefined
  const point = text.indexOf('.')
  if (point < 0) return { units: BigInt(text), scale: 0 }
  return { units: BigInt(text.slice(0, point) + text.slice(point + 1)), scale: text.length - point - 1 }
}

/** The decimal typed in `field`; `number.notADecimal` for exponents, separators, NaN, Infinity and the like. */
export function parseDecimal(text: string, field: string): Checked<Decimal> {
  const value = decimalOf(text)
  return value ? good(value) : bad([problem('number.notADecimal', field, { text })])
}

/** As `parseDecimal`, and `number.negative` below zero. */
export function parseNonNegative(text: string, field: string): Checked<Decimal> {
  const value = parseDecimal(text, field)
  return value.ok && value.value.units < 0n ? bad([problem('number.negative', field)]) : value
}

/** As `parseNonNegative`, and `number.notPositive` at zero. */
export function parsePositive(text: string, field: string): Checked<Decimal> {
  const value = parseNonNegative(text, field)
  return value.ok && value.value.units === 0n ? bad([problem('number.notPositive', field)]) : value
}

/** The sum, exact. */
export function addDecimals(a: Decimal, b: Decimal): Decimal {
  const scale = Math.max(a.scale, b.scale)
  return { units: unitsAt(a, scale) + unitsAt(b, scale), scale }
}

/** The difference a − b, exact. */
export const subtractDecimals = (a: Decimal, b: Decimal): Decimal =>
  addDecimals(a, { units: -b.units, scale: b.scale })

/** The shortest text of the decimal: no trailing zeros after the point, no minus before zero. */
export function decimalText({ units, scale }: Decimal): string {
  const digits = (units < 0n ? -units : units).toString().padStart(scale + 1, '0')
  const whole = digits.slice(0, digits.length - scale)
  const fraction = digits.slice(digits.length - scale).replace(/0+$/, '')
  return (units < 0n ? '-' : '') + whole + (fraction && `.${fraction}`)
}

/** The numerator of the decimal over 10^`scale`; `scale` must be at least the decimal's own. */
const unitsAt = (d: Decimal, scale: number): bigint => d.units * tenTo(scale - d.scale)

const powers = Array.from({ length: 100 }, (_, power) => 10n ** BigInt(power))

/** 10 to the power of a whole number ≥ 0. */
export const tenTo = (power: number): bigint => powers[power] ?? 10n ** BigInt(power)
