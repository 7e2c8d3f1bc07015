import { expect, test } from 'vitest'
import { isNutTurns } from '../../../core/rate/reading.ts'
import { isLimitPerDay } from '../../../core/run-in/limits.ts'
import { blowsAt, mostBlows, strikePatterns } from '../../../core/strike/blows.ts'

test('a rating nut is turned at most a hundred turns either way at one reading', () => {
  expect([-100, 0, 0.25, 100].every(isNutTurns)).toBe(true)
  expect([-100.01, 100.01, Number.NaN, Number.POSITIVE_INFINITY].some(isNutTurns)).toBe(false)
})

test('the greatest rate is above nothing and at most a whole day a day', () => {
  expect([0.01, 60, 86_400].every(isLimitPerDay)).toBe(true)
  expect([0, 0.009, -1, 86_400.1, Number.NaN, Number.POSITIVE_INFINITY].some(isLimitPerDay)).toBe(false)
})

test('no clock sounds more blows at one time than can be written down', () => {
  const quarters = Array.from({ length: 96 }, (_, i) => i * 15)
  const most = Math.max(...strikePatterns.flatMap(pattern => quarters.map(at => blowsAt(pattern, at))))
  expect(most).toBe(28)
  expect(most).toBeLessThanOrEqual(mostBlows)
})
