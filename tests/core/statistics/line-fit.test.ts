import fc from 'fast-check'
import { linearRegression, median as oracleMedian } from 'simple-statistics'
import { expect, test } from 'vitest'
import { leastSquares, lineFit, mostPoints } from '../../../core/statistics/line-fit.ts'
import { median } from '../../../core/statistics/median.ts'
import { theilSen } from '../../../core/statistics/theil-sen.ts'
import { must, refusals } from '../must.ts'
import { norris } from './norris.ts'

const relative = (value: number, certified: number) => Math.abs(value / certified - 1)

// NIST StRD Norris: certified values.
test('NIST StRD Norris: slope, intercept and residual standard deviation are the certified ones to 1e-9', () => {
  const fit = must(lineFit(norris.x, norris.y))
  expect(norris.x).toHaveLength(36)
  expect(relative(fit.intercept, -0.262323073774029)).toBeLessThan(1e-9)
  expect(relative(fit.slope, 1.00211681802045)).toBeLessThan(1e-9)
  expect(relative(fit.residualSd ?? 0, 0.884796396144373)).toBeLessThan(1e-9)
})

// Standards reference §4.
test('the Theil–Sen slope of Norris', () => {
  expect(theilSen(norris.x, norris.y)).toBeCloseTo(1.0021968365553604, 14)
})

// Standards reference §4: the outlier set.
test('one wild reading sways least squares and leaves Theil–Sen alone', () => {
  const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10]
  const fit = must(
    lineFit(
      x,
      x.map(xi => (xi === 10 ? 200 : 2 * xi)),
    ),
  )
  expect(fit.theilSen).toBe(2)
  expect(fit.slope).toBeCloseTo(11.8181818, 7)
})

const finite = fc.double({ min: -1e6, max: 1e6, noNaN: true })
const points = fc
  .array(fc.tuple(fc.integer({ min: -1000, max: 1000 }), finite), { minLength: 2, maxLength: 60 })
  .filter(list => list.some(([x]) => x !== list[0]?.[0]))

test('least squares agrees with an independent library', () => {
  fc.assert(
    fc.property(points, list => {
      const line = leastSquares(
        list.map(([x]) => x),
        list.map(([, y]) => y),
      )
      const oracle = linearRegression(list.map(([x, y]) => [x, y]))
      expect(Math.abs(line.slope - oracle.m)).toBeLessThanOrEqual(1e-7 * (1 + Math.abs(oracle.m)))
      expect(Math.abs(line.intercept - oracle.b)).toBeLessThanOrEqual(1e-5 * (1 + Math.abs(oracle.b)))
    }),
  )
})

test('Theil–Sen is the median of all slopes, taken one by one', () => {
  fc.assert(
    fc.property(points, list => {
      const slopes = list.flatMap(([x, y], i) =>
        list.slice(0, i).flatMap(([u, v]) => (u === x ? [] : [(y - v) / (x - u)])),
      )
      expect(
        theilSen(
          list.map(([x]) => x),
          list.map(([, y]) => y),
        ),
      ).toBeCloseTo(oracleMedian(slopes), 6)
    }),
  )
})

test('Theil–Sen of many points is the same median exactly, also where most slopes are equal or x repeats', () => {
  const y = fc.oneof(finite, fc.integer({ min: 0, max: 1 }))
  const many = fc.array(fc.tuple(fc.integer({ min: 0, max: 400 }), y), { minLength: 301, maxLength: 420 })
  fc.assert(
    fc.property(many, fc.constantFrom(0, 3), (list, rate) => {
      const points = list.map(([x, off]) => [x, rate * x + off] as const)
      const slopes = points.flatMap(([x, yi], i) =>
        points.slice(0, i).flatMap(([u, v]) => (u === x ? [] : [(yi - v) / (x - u)])),
      )
      const found = theilSen(
        points.map(([x]) => x),
        points.map(([, yi]) => yi),
      )
      // + 0: which of the two zeros it is does not matter.
      expect(found + 0).toBe(median(Float64Array.from(slopes)) + 0)
    }),
    { numRuns: 15, endOnFailure: true },
  )
})

test('the median is found whatever the order, also among thousands and among equals', () => {
  const values = fc.oneof(
    fc.array(finite, { minLength: 1, maxLength: 50 }),
    fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 601, maxLength: 3000 }),
    fc.array(finite, { minLength: 601, maxLength: 3000 }),
  )
  fc.assert(
    fc.property(values, list => {
      expect(median(Float64Array.from(list))).toBeCloseTo(oracleMedian(list), 6)
    }),
  )
  expect(median(new Float64Array())).toBeNaN()
})

test('two points are a line without scatter to speak of', () => {
  expect(must(lineFit([1, 3], [5, 9]))).toEqual({ slope: 2, intercept: 3, residualSd: null, theilSen: 2 })
})

test('what cannot be fitted is a problem', () => {
  expect(refusals(lineFit([1], [1]))).toEqual(['fit.tooFew x'])
  expect(refusals(lineFit([1, 2], [1]))).toEqual(['fit.lengths y'])
  expect(refusals(lineFit([2, 2, 2], [1, 2, 3]))).toEqual(['fit.sameX x'])
  expect(refusals(lineFit([1, Number.NaN], [Number.POSITIVE_INFINITY, 2]))).toEqual([
    'fit.notFinite x[1]',
    'fit.notFinite y[0]',
  ])
  const many = Array.from({ length: mostPoints + 1 }, (_, i) => i)
  expect(refusals(lineFit(many, many))).toEqual(['fit.tooMany x'])
})
