import { assert, constantFrom, integer, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measureIn, wholeOf } from '../../../core/measures/measures.ts'

describe('sizes and weights', () => {
  // International Yard and Pound Agreement, 1959, as in NIST SP 811, appendix B: 1 in = 25.4 mm, 1 lb = 453.59237 g.
  it('are kept in whole millimetres and grams, whatever they are typed in', () => {
    expect(wholeOf(10, 'in')).toBe(254)
    expect(wholeOf(12.5, 'in')).toBe(318)
    expect(wholeOf(100, 'lb')).toBe(45_359)
    expect(wholeOf(2.45, 'kg')).toBe(2450)
    expect(wholeOf(415, 'mm')).toBe(415)
  })

  it('are shown as short as they were typed', () => {
    expect(measureIn(318, 'in')).toBe(12.5)
    expect(measureIn(2268, 'lb')).toBe(5)
    expect(measureIn(2450, 'kg')).toBe(2.45)
  })

  it('mean the same whole when what is shown is typed again', () => {
    const units = constantFrom('mm' as const, 'in' as const, 'kg' as const, 'lb' as const)
    assert(
      property(integer({ min: 1, max: 2_000_000 }), units, (whole, unit) => {
        expect(wholeOf(measureIn(whole, unit), unit)).toBe(whole)
      }),
    )
  })
})
