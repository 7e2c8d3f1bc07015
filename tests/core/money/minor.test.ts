import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  minor,
  minorText,
  parseAmount,
  parseMinor,
  parseMinorRounded,
  sumMinor,
} from '../../../core/money/minor.ts'
import { percentOf, times } from '../../../core/money/scaled.ts'
import { must, refusals } from '../must.ts'

test.each([
  ['12.05', 'GBP', 1205],
  ['-12.5', 'GBP', -1250],
  ['1.500', 'GBP', 150],
  ['1.234', 'KWD', 1234],
  ['0.0001', 'CLF', 1],
  ['500', 'JPY', 500],
  ['-0.00', 'EUR', 0],
])('%s %s is %d minor units', (text, currency, amount) => {
  expect(must(parseMinor(text, currency, 'paid'))).toBe(amount)
})

test.each([
  ['1.005', 'EUR', 'money.tooPrecise'],
  ['0.5', 'JPY', 'money.tooPrecise'],
  ['1,000.00', 'EUR', 'money.notADecimal'],
  ['1 000', 'EUR', 'money.notADecimal'],
  ['1e3', 'EUR', 'money.notADecimal'],
  ['NaN', 'EUR', 'money.notADecimal'],
  ['Infinity', 'EUR', 'money.notADecimal'],
  ['', 'EUR', 'money.notADecimal'],
  ['.5', 'EUR', 'money.notADecimal'],
  ['5.', 'EUR', 'money.notADecimal'],
  ['+5', 'EUR', 'money.notADecimal'],
  ['£5', 'EUR', 'money.notADecimal'],
  ['٥', 'EUR', 'money.notADecimal'],
  ['1\n', 'EUR', 'money.notADecimal'],
  ['90071992547409.92', 'EUR', 'money.tooLarge'],
  ['-90071992547409.92', 'EUR', 'money.tooLarge'],
])('%j %s is refused as %s', (text, currency, code) => {
  expect(refusals(parseMinor(text, currency, 'paid'))).toEqual([`${code} paid`])
})

test('an unknown currency is a problem of the currency', () => {
  expect(refusals(parseMinor('1', 'XAU', 'paid'))).toEqual(['money.unknownCurrency currency'])
})

test('the largest safe amount is kept and one more is a problem, never a silent loss', () => {
  expect(must(parseMinor('90071992547409.91', 'USD', 'paid'))).toBe(Number.MAX_SAFE_INTEGER)
  expect(refusals(sumMinor([minor(Number.MAX_SAFE_INTEGER), minor(1)], 'sum'))).toEqual([
    'money.tooLarge sum',
  ])
  expect(must(sumMinor([minor(Number.MAX_SAFE_INTEGER), minor(1), minor(-1)]))).toBe(Number.MAX_SAFE_INTEGER)
})

test('what is written reads back to the same amount in every number of digits', () => {
  const amounts = fc.maxSafeInteger()
  fc.assert(
    fc.property(amounts, fc.constantFrom('JPY', 'USD', 'TND', 'UYW'), (amount, currency) => {
      expect(must(parseMinor(minorText(minor(amount), currency), currency, 'x'))).toBe(amount)
    }),
  )
})

test('an amount is written with all the currency’s places', () => {
  expect(minorText(minor(-5), 'EUR')).toBe('-0.05')
  expect(minorText(minor(-5), 'JPY')).toBe('-5')
  expect(minorText(minor(1234), 'BHD')).toBe('1.234')
  expect(() => minorText(minor(1), 'XAU')).toThrow(RangeError)
})

test('half a minor unit is a bug and throws; the least amount is as far from nothing as the largest', () => {
  expect(() => minor(0.5)).toThrow('not a whole number of minor units: 0.5')
  expect(must(parseMinor('-90071992547409.91', 'USD', 'paid'))).toBe(-Number.MAX_SAFE_INTEGER)
})

test('an amount of any precision is rounded half up, away from nothing', () => {
  const rounded = (text: string) => must(parseMinorRounded(text, 2, 'paid'))
  expect(['0.125', '-0.125', '0.1249'].map(rounded)).toEqual([13, -13, 12])
  expect(refusals(parseMinorRounded('1e2', 2, 'paid'))).toEqual(['money.notADecimal paid'])
})

test('an amount that may not lie below nothing may be nothing', () => {
  expect(must(parseAmount('0', 'GBP', 'paid'))).toBe(0)
  expect(refusals(parseAmount('-0.01', 'GBP', 'paid'))).toEqual(['number.negative paid'])
  expect(refusals(parseAmount('x', 'GBP', 'paid'))).toEqual(['money.notADecimal paid'])
})

test('nothing is written without a sign', () => {
  expect(minorText(minor(0), 'EUR')).toBe('0.00')
})

test('so many percent of an amount are rounded half up, also percent with places', () => {
  expect(percentOf(100n, { units: 125n, scale: 1 })).toBe(13n)
  expect(percentOf(-100n, { units: 125n, scale: 1 })).toBe(-13n)
  expect(times({ units: 5n, scale: 1 }, { units: 25n, scale: 2 }, 2)).toBe(13n)
})
