import { expect, it } from 'vitest'
import { heardNow } from '../../../core/run-in/strike-heard.ts'

it.each([
  ['00:00', 12, 4],
  ['09:14', 9, 4],
  ['09:15', 9, 1],
  ['12:30', 12, 2],
  ['13:59', 1, 3],
])('at %s the hour struck last is %d and the quarter heard last %d', (time, hour, quarter) => {
  expect(heardNow(time)).toEqual({ hour, quarter })
})
