import fc from 'fast-check'
import { Temporal } from 'temporal-polyfill'
import { expect, test } from 'vitest'
import { addDays } from '../../../core/calendar/civil.ts'
import { type TermInput, warrantyTerm } from '../../../core/warranty/term.ts'
import { must, refusals } from '../must.ts'

const year: TermInput = {
  start: '2026-03-04',
  length: 12,
  unit: 'months',
  convention: 'same-date',
  on: '2026-03-04',
}

// EU Reg. 1182/71 Art. 3; Dodds v Walker [1981] 1 WLR 1027; "a year less a day". Standards reference §3.
test.each([
  ['2026-03-04', 12, 'months', 'same-date', '2027-03-04'],
  ['2026-03-04', 12, 'months', 'day-before', '2027-03-03'],
  ['2024-02-29', 12, 'months', 'same-date', '2025-02-28'],
  ['1978-09-30', 4, 'months', 'same-date', '1979-01-30'],
  ['2023-08-31', 6, 'months', 'same-date', '2024-02-29'],
  ['2026-01-01', 90, 'days', 'same-date', '2026-04-01'],
  ['2026-01-01', 90, 'days', 'day-before', '2026-03-31'],
] as const)('from %s %d %s, %s: the last day is %s', (start, length, unit, convention, lastDay) => {
  expect(must(warrantyTerm({ ...year, start, length, unit, convention })).lastDay).toBe(lastDay)
})

test('the first and the last day are covered, the days before and after are not', () => {
  const on = (day: string) => must(warrantyTerm({ ...year, on: day }))
  expect(on('2026-03-03')).toEqual({ lastDay: '2027-03-04', covered: false, daysLeft: 0 })
  expect(on('2026-03-04')).toEqual({ lastDay: '2027-03-04', covered: true, daysLeft: 365 })
  expect(on('2027-03-04')).toEqual({ lastDay: '2027-03-04', covered: true, daysLeft: 0 })
  expect(on('2027-03-05')).toEqual({ lastDay: '2027-03-04', covered: false, daysLeft: 0 })
})

test('days in the shop are added at the end', () => {
  expect(must(warrantyTerm({ ...year, pausedDays: 10 })).lastDay).toBe('2027-03-14')
})

test('the last day agrees with Temporal', () => {
  fc.assert(
    fc.property(
      fc.nat(200_000),
      fc.integer({ min: 1, max: 120 }),
      fc.nat(400),
      (days, length, pausedDays) => {
        const start = addDays('1970-01-01', days)
        const expected = Temporal.PlainDate.from(start).add({ months: length }).add({ days: pausedDays })
        expect(must(warrantyTerm({ ...year, start, length, pausedDays })).lastDay).toBe(expected.toString())
      },
    ),
  )
})

test('every problem of a term is named at once', () => {
  const wrong = {
    start: '2026-02-30',
    length: 0,
    unit: 'months',
    convention: 'day-before',
    pausedDays: -1,
    on: '2026-1-1',
  } as const
  expect(refusals(warrantyTerm(wrong))).toEqual([
    'date.notADate on',
    'date.notADate start',
    'warranty.length length',
    'warranty.pausedDays pausedDays',
  ])
  expect(refusals(warrantyTerm({ ...year, start: '9999-01-01' }))).toEqual(['date.beyondCalendar start'])
  for (const length of [0.5, Number.NaN, 1201])
    expect(refusals(warrantyTerm({ ...year, length }))).toEqual(['warranty.length length'])
})

test('a term is a hundred years at most, and so are the days added to it', () => {
  const wrong = (more: Partial<TermInput>) => refusals(warrantyTerm({ ...year, ...more }))
  expect([wrong({ length: 1 }), wrong({ length: 1200 })]).toEqual([[], []])
  expect([wrong({ length: 36_525, unit: 'days' }), wrong({ pausedDays: 36_525 })]).toEqual([[], []])
  for (const length of [0, 1.5, 36_526])
    expect(wrong({ length, unit: 'days' })).toEqual(['warranty.length length'])
  expect(wrong({ pausedDays: 36_526 })).toEqual(['warranty.pausedDays pausedDays'])
})

test('a term begins by the end of 9799, and on a date', () => {
  const wrong = (start: string) => refusals(warrantyTerm({ ...year, start }))
  expect([wrong('9799-12-31'), wrong('9800-01-01'), wrong('today')]).toEqual([
    [],
    ['date.beyondCalendar start'],
    ['date.notADate start'],
  ])
})

test('a unit or a convention that does not exist is a problem', () => {
  const none = 'none' as never
  expect(refusals(warrantyTerm({ ...year, unit: none, convention: none }))).toEqual([
    'warranty.convention convention',
    'warranty.unit unit',
  ])
})
