import { expect, test } from 'vitest'
import { isLocalTime } from '../../../core/calendar/local.ts'
import { isMoment, momentOf } from '../../../core/calendar/moment.ts'
import { dayBegins, dayEnds } from '../../../core/calendar/zone.ts'

test('a moment is an instant, or a time of the shop’s clocks with or without seconds', () => {
  const at = (text: string) => momentOf(text, 'Europe/London')
  expect(at('2027-07-01T09:20Z')).toBe('2027-07-01T09:20:00.000Z')
  expect(at('2027-07-01T09:20')).toBe('2027-07-01T08:20:00.000Z')
  expect(at('2027-07-01T09:20:07')).toBe('2027-07-01T08:20:07.000Z')
  for (const none of ['2027-07-01', '2027-07-01 09:20', '2027-07-01T09:20:60', '2027-02-30T09:20Z', 'now']) {
    expect(at(none), none).toBeUndefined()
    expect(isMoment(none), none).toBe(false)
  }
  expect(isMoment('2027-07-01T09:20:07')).toBe(true)
})

test('a local time has a T between date and time', () => {
  expect(['2027-07-01T09:20', '2027-07-01 09:20', '2027-07-01x09:20'].map(isLocalTime)).toEqual([
    true,
    false,
    false,
  ])
})

test('a day goes from its first instant to its last in the shop’s time zone', () => {
  expect([dayBegins('2027-07-01', 'Europe/London'), dayEnds('2027-07-01', 'Europe/London')]).toEqual([
    '2027-06-30T23:00:00.000Z',
    '2027-07-01T22:59:59.999Z',
  ])
})
