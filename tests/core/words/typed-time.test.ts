import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { momentOf } from '../../../core/calendar/moment.ts'
import { plainTime } from '../../../core/words/typed-time.ts'

const today = '2026-11-25'
const read = (typed: string, locale = 'en-GB') => plainTime(typed, { today, locale })

describe('a time as it is typed', () => {
  it.each([
    ['09:20', '2026-11-25T09:20'],
    ['9:20', '2026-11-25T09:20'],
    [' 9.20 ', '2026-11-25T09:20'],
    ['09:20:30', '2026-11-25T09:20:30'],
    ['25 Nov 09:20', '2026-11-25T09:20'],
    ['Nov 24, 17:05', '2026-11-24T17:05'],
    ['3 March 2026 8:00', '2026-03-03T08:00'],
    ['2026-11-20 09:20', '2026-11-20T09:20'],
    ['2026-11-20T09:20', '2026-11-20T09:20'],
    ['2026-11-20T09:20:15', '2026-11-20T09:20:15'],
  ])('%s is %s', (typed, plain) => {
    expect(read(typed)).toBe(plain)
  })

  it('a day without a year is the last one that is not after today', () => {
    expect(read('26 Nov 09:20')).toBe('2025-11-26T09:20')
    expect(read('31 Dec 23:50')).toBe('2025-12-31T23:50')
    expect(plainTime('31 Dec 23:50', { today: '2027-01-01', locale: 'en-GB' })).toBe('2026-12-31T23:50')
  })

  it('months may be typed in the shop’s own language, or in English', () => {
    expect(read('3. März 9:20', 'de-DE')).toBe('2026-03-03T09:20')
    expect(read('3 mars 9:20', 'fr-FR')).toBe('2026-03-03T09:20')
    expect(read('3 Mar 9:20', 'fr-FR')).toBe('2026-03-03T09:20')
  })

  it.each(['', '9', 'noon', '24:00', '09:60', '31 Feb 09:20', '25/11 09:20', '25 11 09:20', 'Nov 09:20'])(
    '“%s” is never guessed at',
    typed => {
      expect(read(typed)).toBe(typed)
      expect(momentOf(read(typed), 'Europe/London')).toBe(undefined)
    },
  )

  it('whatever it says is a moment, or the very text that was typed', () => {
    const piece = fc.constantFrom(
      '25',
      'Nov',
      'März',
      '2026',
      '9:20',
      '09.20',
      '2026-11-20',
      'T',
      ',',
      '',
      '99',
    )
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 5 }),
        fc.constantFrom('en-GB', 'de-DE', 'ar-EG'),
        (pieces, locale) => {
          const typed = pieces.join(' ')
          const plain = read(typed, locale)
          if (plain !== typed.trim()) expect(momentOf(plain, 'Europe/London')).toBeDefined()
        },
      ),
    )
  })
})
