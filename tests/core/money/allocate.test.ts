import fc from 'fast-check'
import { expect, test } from 'vitest'
import { allocate } from '../../../core/money/allocate.ts'
import { apportion } from '../../../core/money/apportion.ts'
import { minor } from '../../../core/money/minor.ts'
import { must, refusals } from '../must.ts'

// Standards reference §2: largest remainder, worked by hand.
test.each([
  [7, [10, 59, 31], [1, 4, 2]],
  [10, [6, 6, 1], [5, 4, 1]],
  [-100, [1, 1, 1], [-34, -33, -33]],
  [5, [1, 1], [3, 2]],
  [1, [0, 0, 5], [0, 0, 1]],
])('%d over %j is %j', (total, weights, shares) => {
  expect(must(allocate(minor(total), weights))).toEqual(shares)
})

const weightLists = fc
  .array(fc.integer({ min: 0, max: Number.MAX_SAFE_INTEGER }), { minLength: 1, maxLength: 30 })
  .filter(weights => weights.some(weight => weight > 0))

test('the shares add up, zero weights get nothing, each is within one unit of exact, and −total mirrors', () => {
  fc.assert(
    fc.property(fc.maxSafeInteger(), weightLists, (total, weights) => {
      const shares = must(allocate(minor(total), weights))
      const sum = weights.reduce((all, weight) => all + BigInt(weight), 0n)
      expect(shares.reduce((all, share) => all + BigInt(share), 0n)).toBe(BigInt(total))
      shares.forEach((share, i) => {
        const weight = BigInt(weights[i] ?? 0)
        if (weight === 0n) expect(share).toBe(0)
        const off = BigInt(share) * sum - BigInt(total) * weight
        expect((off < 0n ? -off : off) < sum).toBe(true)
      })
      const mirrored = must(allocate(minor(-total), weights)).map(share => minor(-share))
      expect(mirrored).toEqual(shares)
    }),
  )
})

test('equal weights share the odd units in order', () => {
  fc.assert(
    fc.property(fc.nat(1_000_000), fc.integer({ min: 1, max: 50 }), (total, count) => {
      const shares = must(allocate(minor(total), Array(count).fill(3)))
      expect(shares).toEqual([...shares].sort((a, b) => b - a))
    }),
  )
})

test('weights that are no whole numbers ≥ 0, or all nothing, are problems', () => {
  expect(refusals(allocate(minor(1), [1, -1, 0.5, Number.NaN, Number.POSITIVE_INFINITY]))).toEqual([
    'allocate.weight weights[1]',
    'allocate.weight weights[2]',
    'allocate.weight weights[3]',
    'allocate.weight weights[4]',
  ])
  expect(refusals(allocate(minor(1), [0, 0]))).toEqual(['allocate.noWeight weights'])
  expect(refusals(allocate(minor(1), []))).toEqual(['allocate.noWeight weights'])
})

test('a wrong weight among nothing else is named by itself', () => {
  expect(refusals(allocate(minor(1), [-1, 0]))).toEqual(['allocate.weight weights[0]'])
})

test('of shares equally far behind, one above nothing gets the odd unit before one below, and nothing gets none', () => {
  const tenths = (...shares: number[]) => shares.map(n => ({ n: BigInt(n), d: 10n }))
  expect(apportion(0n, tenths(0, -6, 4))).toEqual([0n, -1n, 1n])
  expect(apportion(2n, tenths(0, 10))).toEqual([0n, 2n])
})
