import fc from 'fast-check'
import { Temporal } from 'temporal-polyfill'
import { expect, test } from 'vitest'
import { addDays, addMonths, daysBetween, isCivilDate, weekday } from '../../../core/calendar/civil.ts'

// Standards reference §3; EU Reg. 1182/71 Art. 3: the term ends on the same date or the month's last day.
test.each([
  ['2026-01-31', 1, '2026-02-28'],
  ['2024-02-29', 12, '2025-02-28'],
  ['2023-02-28', 12, '2024-02-28'],
  ['2023-08-31', 6, '2024-02-29'],
  // Dodds v Walker [1981] 1 WLR 1027: the corresponding date.
  ['1978-09-30', 4, '1979-01-30'],
])('%s + %d months is %s', (date, months, later) => {
  expect(addMonths(date, months)).toBe(later)
})

const dates = fc.integer({ min: 0, max: 2_500_000 }).map(days => addDays('1600-01-01', days))

test('adding months agrees with Temporal over four thousand years', () => {
  fc.assert(
    fc.property(dates, fc.integer({ min: -120, max: 1200 }), (date, months) => {
      fc.pre(date > '1601' && date < '8399')
      expect(addMonths(date, months)).toBe(Temporal.PlainDate.from(date).add({ months }).toString())
    }),
  )
})

test('adding days, counting days and weekdays agree with Temporal', () => {
  fc.assert(
    fc.property(dates, fc.integer({ min: -6000, max: 100_000 }), (date, days) => {
      const plain = Temporal.PlainDate.from(date)
      const later = addDays(date, days)
      expect(later).toBe(plain.add({ days }).toString())
      expect(daysBetween(date, later)).toBe(days)
      expect(weekday(date)).toBe(plain.dayOfWeek)
    }),
  )
})

test('adding months is not associative: renewals are reckoned from the original start', () => {
  expect(addMonths(addMonths('2026-01-31', 1), 1)).toBe('2026-03-28')
  expect(addMonths('2026-01-31', 2)).toBe('2026-03-31')
})

test('a later start never ends earlier', () => {
  fc.assert(
    fc.property(dates, fc.nat(1000), fc.nat(60), (date, days, months) => {
      fc.pre(date < '8000')
      expect(addMonths(addDays(date, days), months) >= addMonths(date, months)).toBe(true)
    }),
  )
})

test.each([
  '2026-02-29',
  '2026-13-01',
  '2026-00-10',
  '2026-1-1',
  '20260101',
  '2026-01-01T00:00',
  '1582-12-31',
  '10000-01-01',
  '',
  'today',
  '2026-01-01 ',
])('%j is no date', text => {
  expect(isCivilDate(text)).toBe(false)
})

test.each(['1583-01-01', '2024-02-29', '9999-12-31'])('%s is a date', text => {
  expect(isCivilDate(text)).toBe(true)
})

test('dates beyond the calendar are a bug and throw', () => {
  expect(() => addDays('9999-12-31', 1)).toThrow(RangeError)
  expect(() => addMonths('9999-12-31', 1)).toThrow(RangeError)
  expect(() => addDays('2026-02-30', 1)).toThrow(RangeError)
})

test('no days are counted from or to what is no date, and it has no weekday', () => {
  expect(() => daysBetween('2026-02-30', '2026-03-01')).toThrow(RangeError)
  expect(() => daysBetween('2026-03-01', 'today')).toThrow(RangeError)
  expect(() => weekday('today')).toThrow(RangeError)
})

test('a year of the first century is not one of the twentieth', () => {
  expect(isCivilDate('0050-01-01')).toBe(false)
})
