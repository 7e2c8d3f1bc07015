import { describe, expect, test } from 'vitest'
import { minor } from '../../../core/money/minor.ts'
import { formats, majorText } from '../../../core/words/format.ts'

const british = formats({ locale: 'en-GB', timeZone: 'Europe/London', currency: 'GBP' })
const inCurrency = (currency: string, locale = 'en-GB') => formats({ locale, timeZone: 'UTC', currency })

describe('money', () => {
  test('is written exactly from whole minor units, up to the largest safe one', () => {
    expect(british.amount(minor(129635))).toBe('1,296.35')
    expect(british.money(minor(41260))).toBe('£412.60')
    expect(british.amount(minor(5))).toBe('0.05')
    expect(british.amount(minor(Number.MAX_SAFE_INTEGER))).toBe('90,071,992,547,409.91')
  })

  test('below zero carries a real minus sign', () => {
    expect(british.amount(minor(-7))).toBe('−0.07')
    expect(british.money(minor(-10000))).toBe('−£100.00')
  })

  // ISO 4217: JPY has no minor unit, KWD three digits, HUF two (where Intl would print none).
  test('has the decimals of ISO 4217, not those of Intl', () => {
    expect(inCurrency('JPY').amount(minor(1250))).toBe('1,250')
    expect(inCurrency('KWD').amount(minor(1250))).toBe('1.250')
    expect(inCurrency('HUF').amount(minor(1250))).toBe('12.50')
  })

  test('follows the locale', () => {
    expect(inCurrency('EUR', 'de-DE').money(minor(123456))).toBe('1.234,56\u00a0€')
  })

  test('of an unknown currency is refused', () => {
    expect(() => inCurrency('XXX')).toThrow(RangeError)
  })

  test('as plain decimal text needs no float', () => {
    expect(majorText(minor(100499999), 3)).toBe('100499.999')
    expect(majorText(minor(-1), 2)).toBe('-0.01')
    expect(majorText(minor(7), 0)).toBe('7')
  })
})

describe('decimals that a person typed', () => {
  test('keep every digit', () => {
    expect(british.percent('8.875')).toBe('8.875%')
    expect(british.quantity('2.50')).toBe('2.5')
    expect(british.quantity('1234.000000000000001')).toBe('1,234.000000000000001')
    expect(british.unitPrice('0.0088')).toBe('0.0088')
    expect(british.unitPrice('62')).toBe('62.00')
  })
})

describe('dates', () => {
  test('that are civil stay on their day in every zone', () => {
    for (const timeZone of ['Pacific/Kiritimati', 'America/Adak', 'UTC']) {
      const write = formats({ locale: 'en-GB', timeZone, currency: 'GBP' })
      expect(write.date('2027-03-04')).toBe('4 Mar 2027')
      expect(write.shortDate('2027-03-04')).toBe('4 Mar')
      expect(write.longDate('2027-03-04')).toMatch(/^Thursday,? 4 March 2027$/)
    }
  })

  test('that are instants are written in the shop’s zone', () => {
    const adak = formats({ locale: 'en-GB', timeZone: 'America/New_York', currency: 'USD' })
    expect(adak.instant('2027-03-05T01:10:00.000Z')).toBe('4 Mar 2027, 20:10')
  })
})

describe('seconds of error', () => {
  test.each([
    [-5, '−5 s'],
    [41, '+41 s'],
    [0, '0 s'],
    [-0.04, '0 s'],
    [2.25, '+2.3 s'],
    [-99, '−99 s'],
    [100, '+1:40'],
    [130, '+2:10'],
    [-3725, '−1:02:05'],
  ])('%d is written %s', (seconds, text) => {
    expect(british.signedSeconds(seconds)).toBe(text)
  })
})
