import { expect, test } from 'vitest'
import { isDue, isOverdue } from '../../../core/calendar/due.ts'

test('what is due on a day is due from that day on, and overdue from the day after', () => {
  expect(['2027-03-03', '2027-03-04', '2027-03-05'].map(today => isDue('2027-03-04', today))).toEqual([
    false,
    true,
    true,
  ])
  expect(['2027-03-04', '2027-03-05'].map(today => isOverdue('2027-03-04', today))).toEqual([false, true])
})

test('what is due on no day never is', () => {
  expect(isDue(null, '2027-03-04')).toBe(false)
  expect(isOverdue(null, '9999-12-31')).toBe(false)
})
