import { expect, test } from 'vitest'
import { closedDaysBetween } from '../../../core/calendar/closed-days.ts'
import { workCalendar } from '../../../core/calendar/work.ts'
import { must } from '../must.ts'

const week = [1, 2, 3, 4, 5].map(day => ({ day, from: '09:00', to: '17:00' }))
const calendar = must(workCalendar({ week, holidays: ['2027-03-26', '2027-03-29'] }))

const closed = (from: string, to: string, zone = 'Europe/London') =>
  closedDaysBetween(calendar, zone)(Date.parse(from), Date.parse(to))

// 2027-03-05 is a Friday.
test('the days that the shop does not open between two instants are counted, without the first and the last', () => {
  expect(closed('2027-03-05T16:00Z', '2027-03-08T10:00Z')).toBe(2)
  expect(closed('2027-03-05T16:00Z', '2027-03-06T23:59Z')).toBe(0)
  expect(closed('2027-03-05T16:00Z', '2027-03-07T00:00Z')).toBe(1)
  expect(closed('2027-03-06T10:00Z', '2027-03-07T10:00Z')).toBe(0)
  expect(closed('2027-03-01T10:00Z', '2027-03-04T10:00Z')).toBe(0)
  expect(closed('2027-03-25T16:00Z', '2027-03-30T10:00Z')).toBe(4)
})

test('they are days of the shop’s own time zone', () => {
  expect(closed('2027-03-05T16:00Z', '2027-03-06T23:30Z', 'Asia/Tokyo')).toBe(0)
  expect(closed('2027-03-05T14:00Z', '2027-03-06T23:30Z', 'Asia/Tokyo')).toBe(1)
})
