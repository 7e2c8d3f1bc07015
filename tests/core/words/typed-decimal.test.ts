import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { localDecimal, plainDecimal } from '../../../core/words/typed-decimal.ts'

describe('a decimal as a person types it', () => {
  it('is read with the decimal sign of the shop’s way of writing', () => {
    expect(plainDecimal('62,50', 'nl-NL')).toBe('62.50')
    expect(plainDecimal(' 62,5 ', 'de-DE')).toBe('62.5')
    expect(plainDecimal('62.50', 'en-GB')).toBe('62.50')
    expect(plainDecimal('62.50', 'nl-NL')).toBe('62.50')
  })

  it('is never guessed at where its sign may group thousands: it is left to be refused', () => {
    for (const [typed, locale] of [
      ['1.250', 'nl-NL'],
      ['12.500', 'de-DE'],
      ['1,250', 'en-GB'],
      ['1.250,00', 'nl-NL'],
    ] as const)
      expect(plainDecimal(typed, locale)).not.toMatch(/^-?\d+(\.\d+)?$/)
  })

  it('shown in the shop’s way of writing and read again is the same, unless it could group thousands', () => {
    const cents = fc.integer({ min: -1e7, max: 1e7 }).map(n => (n / 100).toFixed(2))
    fc.assert(
      fc.property(cents, fc.constantFrom('nl-NL', 'de-DE', 'en-GB', 'fr-FR', 'de-CH'), (plain, locale) => {
        expect(plainDecimal(localDecimal(plain, locale), locale)).toBe(plain)
      }),
    )
  })
})
