import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cashFor, changesHands, inCash, restOf, usualCashStep } from '../../../core/money/cash.ts'
import { minor } from '../../../core/money/minor.ts'

describe('cash', () => {
  // Unicode CLDR, supplementalData.xml, currencyData/fractions: CHF and CAD cashRounding 5, DKK cashRounding 50, SEK cashDigits 0.
  it('is rounded where the currency has no smaller coin', () => {
    expect(['CHF', 'CAD', 'DKK', 'SEK', 'GBP', 'USD'].map(code => usualCashStep(code, ''))).toEqual([
      '0.05',
      '0.05',
      '0.50',
      '1',
      '0',
      '0',
    ])
  })

  // AUD, HUF and NZD, and the countries of the euro, from memory.
  it('is rounded so elsewhere', () => {
    expect(['AUD', 'CZK', 'HUF', 'NOK', 'NZD'].map(code => usualCashStep(code, ''))).toEqual([
      '0.05',
      '1',
      '5',
      '1',
      '0.10',
    ])
  })

  it('is rounded to five cents in some countries of the euro, there in euro alone', () => {
    const rounding = ['BE', 'EE', 'FI', 'IE', 'IT', 'LT', 'NL', 'SK']
    expect(rounding.filter(country => usualCashStep('EUR', country) !== '0.05')).toEqual([])
    expect(usualCashStep('EUR', 'DE')).toBe('0')
    expect(usualCashStep('GBP', 'IE')).toBe('0')
  })

  it('goes to the nearest coin, halves away from nothing, alike when it is given back', () => {
    const to = (amount: number, step: number) => inCash(minor(amount), minor(step))
    expect([1002, 1003, 1007, 1008, -1003].map(amount => to(amount, 5))).toEqual([
      1000, 1005, 1005, 1010, -1005,
    ])
    expect([1025, 1024, 1075].map(amount => to(amount, 50))).toEqual([1050, 1000, 1100])
    expect(to(1003, 0)).toBe(1003)
  })

  it('settles the whole with the difference, however the whole was typed', () => {
    const expected = { amount: 1005, rounding: -2 }
    expect(cashFor(minor(1003), minor(1003), minor(5))).toEqual(expected)
    expect(cashFor(minor(1005), minor(1003), minor(5))).toEqual(expected)
    expect(cashFor(minor(-1002), minor(-1002), minor(5))).toEqual({ amount: -1000, rounding: -2 })
  })

  it('takes a part only as coins pay it', () => {
    expect(cashFor(minor(500), minor(1003), minor(5))).toEqual({ amount: 500, rounding: 0 })
    expect(cashFor(minor(501), minor(1003), minor(5))).toBeNull()
  })

  it('and its difference always add up to the whole, less than a coin apart', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1e9, max: 1e9 }),
        fc.constantFrom(0, 5, 10, 50, 100, 500),
        (open, step) => {
          const cash = cashFor(minor(open), minor(open), minor(step))
          expect((cash?.amount ?? 0) + (cash?.rounding ?? 0)).toBe(open)
          expect(Math.abs(cash?.rounding ?? 0) * 2).toBeLessThanOrEqual(step)
          if (step) expect(Math.abs((cash?.amount ?? 0) % step)).toBe(0)
        },
      ),
    )
  })
})

describe('what changes hands', () => {
  const five = minor(5)

  it('is what coins can pay in cash, and the amount itself by any other way', () => {
    expect(changesHands(true, minor(1002), minor(1002), five)).toEqual({ amount: 1000, rounding: 2 })
    expect(changesHands(false, minor(1002), minor(1002), five)).toEqual({ amount: 1002, rounding: 0 })
    expect(changesHands(true, minor(1003), minor(2000), five)).toBeNull()
    expect(changesHands(false, minor(1003), minor(2000), five)).toEqual({ amount: 1003, rounding: 0 })
  })

  it('leaves a rest from one cent above what is open', () => {
    const paid = (amount: number, rounding = 0) => ({ amount: minor(amount), rounding: minor(rounding) })
    expect([999, 1000, 1001].map(amount => restOf(paid(amount), minor(1000)))).toEqual([0, 0, 1])
  })

  it('leaves none where cash was rounded up or down to settle the whole', () => {
    for (const open of [1002, 1003])
      expect(
        restOf(
          changesHands(true, minor(open), minor(open), five) ?? { amount: minor(0), rounding: minor(0) },
          minor(open),
        ),
      ).toBe(0)
  })
})
