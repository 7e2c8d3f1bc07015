import { describe, expect, it } from 'vitest'
import { rateBars, windsOver } from '../../../core/run-in/wind-charts.ts'
import { at, fortnight } from './shelf-log.ts'

const box = { width: 400, height: 140, left: 50, right: 10, top: 10, bottom: 20 }

describe('winds over one another', () => {
  it('begin each at zero, and a steady clock’s lie on one line', () => {
    const winds = windsOver(fortnight(), box)?.winds ?? []
    expect(winds.map(wind => wind.at)).toEqual([at(0), at(7)])
    const [first, second] = winds
    expect(second?.points.map(({ x }) => x)).toEqual(first?.points.map(({ x }) => x))
    second?.points.forEach(({ y }, i) => {
      expect(y).toBeCloseTo(first?.points[i]?.y ?? Number.NaN, 9)
    })
  })

  it('pass over hands that were set', () => {
    const set = fortnight({
      4: { leftSeconds: 0 },
      ...Object.fromEntries(Array.from({ length: 10 }, (_, i) => [i + 5, { errorSeconds: 3 * (i + 1) }])),
    })
    const [first, second] = windsOver(set, box)?.winds ?? []
    expect(first?.points.at(-1)?.y).toBeCloseTo(second?.points.at(-1)?.y ?? Number.NaN, 9)
  })

  it('of one wind alone are not drawn', () => {
    expect(windsOver(fortnight({}, 6), box)).toBeNull()
  })
})

describe('the bars of the daily rate', () => {
  it('are one for each pair of readings, as high as the rate, within the room', () => {
    const drawn = rateBars(fortnight(), 10, box)
    expect(drawn?.bars).toHaveLength(14)
    for (const { perDay, x, width, y, height } of drawn?.bars ?? []) {
      expect(perDay).toBeCloseTo(3, 9)
      expect(x).toBeGreaterThanOrEqual(box.left)
      expect(x + width).toBeLessThanOrEqual(box.width - box.right)
      expect(y).toBeGreaterThanOrEqual(box.top)
      expect(y + height).toBeLessThanOrEqual(box.height - box.bottom)
    }
    const [high = 0, low = 0] = drawn?.limits ?? []
    expect((drawn?.bars[0]?.height ?? 0) / ((low - high) / 2)).toBeCloseTo(0.3, 9)
  })

  it('of a clock that loses hang below zero', () => {
    const [losing] =
      rateBars(
        fortnight(Object.fromEntries([1, 2, 3].map(day => [day, { errorSeconds: -5 * day }])), 3),
        10,
        box,
      )?.bars ?? []
    const [gaining] = rateBars(fortnight({}, 3), 10, box)?.bars ?? []
    expect(losing?.y).toBeGreaterThan(gaining?.y ?? 0)
  })

  it('need three rates', () => {
    expect(rateBars(fortnight({}, 2), 10, box)).toBeNull()
  })
})
