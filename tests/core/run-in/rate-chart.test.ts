import { describe, expect, it } from 'vitest'
import { pointsText, rateChart } from '../../../core/run-in/rate-chart.ts'

const box = { width: 600, height: 240, left: 60, right: 20, top: 10, bottom: 30 }
const day = (n: number) => new Date(Date.parse('2027-03-01T09:00:00.000Z') + n * 86_400_000).toISOString()
const steady = [0, 1, 2, 3, 4].map(n => ({ at: day(n), errorSeconds: n * 2, wound: n % 2 === 0 }))

describe('the rate chart', () => {
  it('draws a steady clock as a straight line whose fit lies on its readings', () => {
    const { segments } = rateChart(steady, 10, box)
    expect(segments).toHaveLength(1)
    const [first, last] = [segments[0]?.points[0], segments[0]?.points.at(-1)]
    expect(first?.x).toBe(60)
    expect(last?.x).toBe(580)
    expect(segments[0]?.fit?.[0]?.y).toBeCloseTo(first?.y ?? 0, 9)
    expect(segments[0]?.fit?.[1]?.y).toBeCloseTo(last?.y ?? 0, 9)
    expect(first?.y).toBeGreaterThan(last?.y ?? 0)
  })

  it('opens a wedge of the limit from the first reading of each stretch', () => {
    const [, high, low] = rateChart(steady, 10, box).segments[0]?.band ?? []
    const { points } = rateChart(steady, 10, box).segments[0] ?? { points: [] }
    const perSecond = ((points[0]?.y ?? 0) - (points[4]?.y ?? 0)) / 8
    expect((low?.y ?? 0) - (high?.y ?? 0)).toBeCloseTo(80 * perSecond, 6)
  })

  it('parts the line where the clock was touched, and says what was done', () => {
    const log = [...steady, { at: day(5), leftSeconds: 0, nutTurns: 0.5 }]
    const chart = rateChart(log, 10, box)
    expect(chart.segments.map(({ points }) => points.length)).toEqual([5, 1])
    expect(chart.segments[1]).toMatchObject({ fit: null, band: [] })
    expect(chart.marks).toMatchObject([{ kinds: ['nut', 'hands'], turns: 0.5, x: 580 }])
  })

  it('marks every wind, and writes days that do not run into one another', () => {
    const daily = Array.from({ length: 400 }, (_, n) => ({ at: day(n), errorSeconds: n % 7, wound: true }))
    const { winds, days } = rateChart(daily, 10, box)
    expect(winds).toHaveLength(400)
    expect(days.length).toBeLessThanOrEqual(7)
    for (const [i, label] of days.slice(1).entries()) expect(label.x - (days[i]?.x ?? 0)).toBeGreaterThan(60)
  })

  it('has lines at round seconds within its room, for seconds as for hours', () => {
    for (const size of [0, 3, 45, 900, 50_000]) {
      const log = [0, 1].map(n => ({ at: day(n), errorSeconds: n * size }))
      const { seconds } = rateChart(log, 10, box)
      expect(seconds.length).toBeGreaterThan(1)
      expect(seconds.length).toBeLessThanOrEqual(7)
      for (const { y } of seconds) expect(y).toBeGreaterThanOrEqual(box.top - 1e-9)
      for (const { y } of seconds) expect(y).toBeLessThanOrEqual(box.height - box.bottom + 1e-9)
    }
  })

  it('of an empty log is empty', () => {
    expect(rateChart([], 10, box)).toMatchObject({ segments: [], winds: [], marks: [], days: [] })
    expect(pointsText([{ x: 1, y: 2.25 }])).toBe('1.0,2.3')
  })
})
