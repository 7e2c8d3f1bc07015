import { describe, expect, test } from 'vitest'
import { periodOf } from '../../../core/calendar/period.ts'

describe('periods of the books', () => {
  test('a month runs from its first day to its last, in February by the calendar', () => {
    expect(periodOf('month', '2027-02-14')).toEqual({ from: '2027-02-01', to: '2027-02-28' })
    expect(periodOf('month', '2028-02-29')).toEqual({ from: '2028-02-01', to: '2028-02-29' })
  })

  test.each([
    ['2027-01-01', '2027-01-01', '2027-03-31'],
    ['2027-03-31', '2027-01-01', '2027-03-31'],
    ['2027-04-01', '2027-04-01', '2027-06-30'],
    ['2027-12-31', '2027-10-01', '2027-12-31'],
  ])('%s lies in the quarter from %s to %s', (on, from, to) => {
    expect(periodOf('quarter', on)).toEqual({ from, to })
  })

  test('the period before this one may lie in the year before', () => {
    expect(periodOf('month', '2027-01-20', 1)).toEqual({ from: '2026-12-01', to: '2026-12-31' })
    expect(periodOf('quarter', '2027-02-20', 1)).toEqual({ from: '2026-10-01', to: '2026-12-31' })
    expect(periodOf('year', '2027-07-01', 1)).toEqual({ from: '2026-01-01', to: '2026-12-31' })
  })

  test('periods of one kind follow each other without a gap or an overlap', () => {
    for (const kind of ['month', 'quarter', 'year'] as const)
      for (let ago = 1; ago < 30; ago++) {
        const [earlier, later] = [periodOf(kind, '2027-05-31', ago), periodOf(kind, '2027-05-31', ago - 1)]
        expect(Date.parse(later.from) - Date.parse(earlier.to)).toBe(86_400_000)
      }
  })
})
