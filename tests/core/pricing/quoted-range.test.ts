import { expect, test } from 'vitest'
import { minor } from '../../../core/money/minor.ts'
import { leavesQuoted, rangeProblems } from '../../../core/pricing/quoted-range.ts'

const told = { low: minor(45_000), high: minor(62_000) }

test('an estimate leaves what was said over the counter when it may come to more, or cannot come to as much', () => {
  expect(leavesQuoted(told, minor(50_000), null)).toBeNull()
  expect(leavesQuoted(told, minor(62_000), null)).toBeNull()
  expect(leavesQuoted(told, minor(62_001), null)).toBe('above')
  expect(leavesQuoted(told, minor(50_000), minor(70_000))).toBe('above')
  expect(leavesQuoted(told, minor(40_000), minor(46_000))).toBeNull()
  expect(leavesQuoted(told, minor(40_000), null)).toBe('below')
})

test('an end that was not told cannot be left', () => {
  expect(leavesQuoted({}, minor(1), minor(9_999_999))).toBeNull()
  expect(leavesQuoted({ low: minor(100) }, minor(9_999_999), null)).toBeNull()
  expect(leavesQuoted({ high: minor(100) }, minor(1), null)).toBeNull()
})

test('the upper end of a range may be the lower one, and no cent below it', () => {
  const wrong = (low: number | null, high: number | null) =>
    rangeProblems(low === null ? null : minor(low), high === null ? null : minor(high), 'high')
  expect(wrong(10_000, 10_000)).toEqual([])
  expect(wrong(10_000, 10_001)).toEqual([])
  expect(wrong(10_000, 9_999)).toEqual([{ code: 'estimate.highBelowLow', field: 'high' }])
  expect([wrong(null, 0), wrong(10_000, null), wrong(null, null)]).toEqual([[], [], []])
})

test('an estimate may come to the very lower end, and no cent less', () => {
  expect(leavesQuoted(told, minor(45_000), null)).toBeNull()
  expect(leavesQuoted(told, minor(44_999), null)).toBe('below')
})
