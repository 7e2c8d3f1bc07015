import { expect, test } from 'vitest'
import { isCivilDate } from '../../core/calendar/civil.ts'
import { holidaysAttribution, publicHolidays } from '../../electron/server/holidays.ts'
import { must, refusals } from '../core/must.ts'

// Standards reference §3; gov.uk bank holidays 2026, England and Wales: the substitute for 26 December is the 28th.
test('the public holidays of England in 2026', () => {
  expect(must(publicHolidays('GB', 'ENG', 2026)).map(({ date }) => date)).toEqual([
    '2026-01-01',
    '2026-04-03',
    '2026-04-06',
    '2026-05-04',
    '2026-05-25',
    '2026-08-31',
    '2026-12-25',
    '2026-12-26',
    '2026-12-28',
  ])
})

test('holidays are dates in order, with names, for every kind of place', () => {
  for (const [country, region] of [
    ['US', ''],
    ['US', 'CA'],
    ['DE', 'BY'],
    ['JP', ''],
    ['CA', 'QC'],
  ] as const) {
    const holidays = must(publicHolidays(country, region, 2027))
    expect(holidays.length).toBeGreaterThan(5)
    expect(holidays.every(({ date, name }) => isCivilDate(date) && name !== '')).toBe(true)
    expect(holidays.map(({ date }) => date)).toEqual(holidays.map(({ date }) => date).sort())
  }
})

test('the attribution names the data and its licence', () => {
  expect(holidaysAttribution).toMatch(/date-holidays.*CC BY-SA/)
})

test('a country, region or year that is not known is a problem', () => {
  expect(refusals(publicHolidays('XX', '', 1500))).toEqual(['holidays.country country', 'holidays.year year'])
  expect(refusals(publicHolidays('GB', 'CA', 2026))).toEqual(['holidays.region region'])
  expect(refusals(publicHolidays('toString', '', 2026))).toEqual(['holidays.country country'])
})
