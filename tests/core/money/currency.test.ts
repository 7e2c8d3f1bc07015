import { expect, test } from 'vitest'
import { currencies, minorDigits } from '../../../core/money/currency.ts'

// ISO 4217 list one; standards reference §2.
test.each([
  [0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'],
  [2, 'AUD CAD CHF EUR GBP INR MGA MRU NZD SEK USD ZAR'],
  [3, 'BHD IQD JOD KWD LYD OMR TND'],
  [4, 'CLF UYW'],
])('currencies of %d digits', (digits, codes) => {
  for (const code of codes.split(' ')) expect([code, minorDigits(code)]).toEqual([code, digits])
})

test('where the machine’s fraction digits follow cash use instead, ISO 4217 holds', () => {
  expect(['HUF', 'COP', 'IDR', 'PKR'].map(minorDigits)).toEqual([2, 2, 2, 2])
  expect(minorDigits('IQD')).toBe(3)
})

test('no code without a minor unit, in another case or of an object’s own names is a currency', () => {
  for (const code of ['XAU', 'XXX', 'XTS', 'eur', '', 'toString', '__proto__', 'EURO'])
    expect(minorDigits(code)).toBeUndefined()
})

test('every currency is listed once, in order, with three capitals', () => {
  expect([...new Set(currencies)]).toEqual(currencies)
  expect([...currencies].sort()).toEqual(currencies)
  expect(currencies.filter(code => !/^[A-Z]{3}$/.test(code))).toEqual([])
})

// ISO 4217 list three: withdrawn since 2020.
test('currencies that were withdrawn can be read on old papers, and no books are kept in them', () => {
  for (const code of ['ANG', 'BGN', 'CUC', 'HRK', 'SLL', 'ZWL']) {
    expect(minorDigits(code)).toBe(2)
    expect(currencies).not.toContain(code)
  }
})
