import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  addDecimals,
  decimalOf,
  decimalText,
  parseNonNegative,
  parsePositive,
  subtractDecimals,
} from '../../../core/decimal/decimal.ts'
import { sumFractions } from '../../../core/decimal/fraction.ts'
import { refusals } from '../must.ts'

const Exact = Decimal.clone({ precision: 200, toExpPos: 100, toExpNeg: -100 })

const texts = fc
  .tuple(fc.boolean(), fc.bigInt({ min: 0n, max: 10n ** 18n }), fc.option(fc.stringMatching(/^\d{1,12}$/)))
  .map(([negative, whole, places]) => `${negative ? '-' : ''}${whole}${places === null ? '' : `.${places}`}`)

const read = (text: string) => decimalOf(text) ?? { units: 0n, scale: -1 }

test('a decimal is read, added, subtracted and written as an independent library does it', () => {
  fc.assert(
    fc.property(texts, texts, (a, b) => {
      expect(decimalText(read(a))).toBe(new Exact(a).toString().replace(/^-0$/, '0'))
      expect(decimalText(addDecimals(read(a), read(b)))).toBe(
        new Exact(a).plus(b).toString().replace(/^-0$/, '0'),
      )
      expect(decimalText(subtractDecimals(read(a), read(b)))).toBe(
        new Exact(a).minus(b).toString().replace(/^-0$/, '0'),
      )
    }),
  )
})

test.each([
  '',
  '-',
  '.',
  '1.',
  '.1',
  '+1',
  '--1',
  '1e3',
  '1,5',
  '1 ',
  ' 1',
  '1\n',
  '0x1',
  'NaN',
  'Infinity',
  '١',
  '1'.repeat(41),
])('%j is no decimal', text => {
  expect(decimalOf(text)).toBeUndefined()
})

test('below zero and zero are told apart', () => {
  expect(refusals(parseNonNegative('-0.1', 'x'))).toEqual(['number.negative x'])
  expect(refusals(parsePositive('0.00', 'x'))).toEqual(['number.notPositive x'])
  expect(refusals(parsePositive('1..0', 'x'))).toEqual(['number.notADecimal x'])
})

test('fractions add up exactly whatever their denominators and order', () => {
  const fractions = fc.array(
    fc.record({
      n: fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }),
      d: fc.bigInt({ min: 1n, max: 10n ** 6n }),
    }),
    { maxLength: 30 },
  )
  fc.assert(
    fc.property(fractions, list => {
      const [sum, back] = [sumFractions(list), sumFractions(list.toReversed())]
      expect(sum.n * back.d).toBe(back.n * sum.d)
      let [n, d] = [0n, 1n]
      for (const one of list) [n, d] = [n * one.d + one.n * d, d * one.d]
      expect(sum.n * d).toBe(n * sum.d)
    }),
  )
})
