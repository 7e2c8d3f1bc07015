import { describe, expect, test } from 'vitest'
import { ratesBetween } from '../../../core/rate/rates-between.ts'

const at = (hour: number) => new Date(Date.UTC(2027, 2, 4, hour)).toISOString()

describe('the rate from each reading to the next', () => {
  test('is what was gained or lost, reckoned to a whole day', () => {
    const readings = [
      { at: at(9), errorSeconds: 0 },
      { at: at(33), errorSeconds: 12 },
      { at: at(45), errorSeconds: 8 },
    ]
    expect(ratesBetween(readings)).toEqual([null, 12, -8])
  })

  test('is not known at the first reading, nor at one where the clock was touched', () => {
    const readings = [
      { at: at(9), errorSeconds: 60 },
      { at: at(33), errorSeconds: 0, handsSet: true },
      { at: at(57), errorSeconds: -3 },
    ]
    expect(ratesBetween(readings)).toEqual([null, null, -3])
  })

  test('of no readings is nothing', () => {
    expect(ratesBetween([])).toEqual([])
  })
})
