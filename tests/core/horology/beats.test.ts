import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { beatsOf } from '../../../core/horology/beats.ts'

describe('what is typed as a clock’s beats', () => {
  it.each([
    ['7200', '7200', 7200],
    ['8142.857', '8142.857', 8142.857],
    ['8142,857', '8142.857', 8142.857],
    [' 3600.50 ', '3600.5', 3600.5],
    ['60', '60', 60],
    ['100000', '100000', 100_000],
    ['7200.123456789', '7200.123456789', 7200.123456789],
  ])('is beats an hour: %s', (typed, text, bph) => {
    expect(beatsOf(typed)).toEqual({ text, bph, train: null })
  })

  // GO, trains: 84-78 over 7-7 with 30 teeth is 133.7 a minute.
  it('or a train, kept as such: its beats are no decimal number', () => {
    const beats = beatsOf('84-78/7-7/30')
    expect(beats?.text).toBe('84-78 / 7-7 / 30')
    expect(beats?.bph).toBeCloseTo((2 * 30 * 84 * 78) / 49, 9)
    expect(beats?.train).toEqual({ wheels: [84, 78], pinions: [7, 7], escape: 30 })
  })

  it('a whole number in the place of 8142.857142… beats would be five seconds a day out', () => {
    const exact = beatsOf('95-80 / 8-7 / 30')?.bph ?? 0
    expect(exact).toBeCloseTo(8142.857142857, 6)
    expect(Math.abs((Math.round(exact) / exact - 1) * 86_400)).toBeGreaterThan(1.5)
  })

  it.each([
    '',
    'fast',
    '0',
    '59.99',
    '18,000',
    '100000.1',
    '-3600',
    '7200.1234567891',
    '1e4',
    '7.200,5',
    '84-78 / 7-7',
    '84-78 / 7 / 30',
    '84 / 0 / 30',
    '10000 / 1 / 10000',
    '84-78 / 7-7 / 30.5',
  ])('is refused where it is neither: “%s”', typed => {
    expect(beatsOf(typed)).toBeUndefined()
  })
})

test('what is kept reads as itself again', () => {
  const tooth = fc.integer({ min: 6, max: 120 })
  const typed = fc.oneof(
    fc.integer({ min: 1, max: 99_999_999 }).map(n => String(n / 1000)),
    fc
      .tuple(fc.array(fc.tuple(tooth, tooth), { minLength: 1, maxLength: 4 }), tooth)
      .map(
        ([pairs, teeth]) =>
          `${pairs.map(([wheel]) => wheel).join('-')}/${pairs.map(([, leaves]) => leaves).join('-')}/${teeth}`,
      ),
  )
  fc.assert(
    fc.property(typed, text => {
      const beats = beatsOf(text)
      if (beats) expect(beatsOf(beats.text)).toEqual(beats)
    }),
  )
})
