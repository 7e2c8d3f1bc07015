import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Reading, rateOf } from '../../../core/rate/rate.ts'
import { must, refusals } from '../must.ts'

const day = (n: number) => new Date(Date.UTC(2026, 2, 1, 9) + n * 86_400_000).toISOString()
const read = (n: number, errorSeconds: number, more: Partial<Reading> = {}): Reading => ({
  at: day(n),
  errorSeconds,
  ...more,
})

test('a clock that gains 10 s a day is found to', () => {
  const { segments } = must(rateOf([read(0, 0), read(1, 10), read(2, 20), read(4, 40)]))
  expect(segments).toEqual([
    { from: day(0), to: day(4), readings: 4, ratePerDay: 10, robustRatePerDay: 10, residualSd: 0 },
  ])
})

test.each([
  ['handsSet', { handsSet: true }],
  ['nutTurns', { nutTurns: -0.5 }],
  ['stopped', { stopped: true }],
])(
  'a reading with %s closes the segment before it and opens the next with what is left on the clock',
  (_name, done) => {
    const { segments } = must(rateOf([read(0, 0), read(1, 5), read(2, -3, done), read(3, -2), read(5, 0)]))
    expect(segments.map(({ from, to, readings, ratePerDay }) => [from, to, readings, ratePerDay])).toEqual([
      [day(0), day(1), 2, 5],
      [day(2), day(5), 3, 1],
    ])
  },
)

test('what was not done opens nothing', () => {
  const none = { handsSet: false, stopped: false, nutTurns: 0 }
  expect(must(rateOf([read(0, 0), read(1, 5, none), read(2, 10)])).segments).toHaveLength(1)
})

test('fewer than two readings in a segment give null, and fewer than three no scatter', () => {
  const { segments } = must(rateOf([read(0, 0), read(1, 0, { stopped: true }), read(2, 4)]))
  expect(
    segments.map(({ ratePerDay, robustRatePerDay, residualSd }) => [
      ratePerDay,
      robustRatePerDay,
      residualSd,
    ]),
  ).toEqual([
    [null, null, null],
    [4, 4, null],
  ])
  expect(must(rateOf([]))).toEqual({
    segments: [],
    netPerWind: [],
    secondsPerDayPerTurn: null,
    suggestedTurns: null,
  })
})

test('the net over a wind is counted from wind to wind inside one segment only', () => {
  const wound = { wound: true }
  const log = [
    read(0, 0, wound),
    read(3, 40),
    read(7, 12, wound),
    read(14, -3, wound),
    read(15, 0, { ...wound, handsSet: true }),
    read(22, 9, wound),
  ]
  expect(must(rateOf(log)).netPerWind).toEqual([12, -15, 9])
})

test('one turn of the nut is learned from the log and the last rate brought to zero by it', () => {
  const log = [
    read(0, 0),
    read(2, 60),
    read(3, 0, { handsSet: true, nutTurns: -1 }),
    read(5, 20),
    read(6, 0, { handsSet: true, nutTurns: -0.25 }),
    read(8, 10),
  ]
  const result = must(rateOf(log))
  // Rates 30, 10, 5; least squares through zero: (−1·−20 + −0.25·−5) ÷ (1 + 0.0625).
  expect(result.secondsPerDayPerTurn).toBeCloseTo(21.25 / 1.0625, 12)
  expect(result.suggestedTurns).toBeCloseTo(-5 / 20, 12)
})

test('a turn without a rate on both sides of it teaches nothing', () => {
  const log = [read(0, 0), read(1, 0, { nutTurns: 1 }), read(2, 5)]
  expect(must(rateOf(log))).toMatchObject({ secondsPerDayPerTurn: null, suggestedTurns: null })
})

test('a rate is recovered from synthetic logs, and the robust rate also where a quarter of the readings are wild', () => {
  const logs = fc.record({
    rate: fc.double({ min: -120, max: 120, noNaN: true }),
    offset: fc.integer({ min: -600, max: 600 }),
    noise: fc.array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: 24, maxLength: 24 }),
    wild: fc.uniqueArray(fc.nat(23), { minLength: 1, maxLength: 5 }),
  })
  fc.assert(
    fc.property(logs, ({ rate, offset, noise, wild }) => {
      const clean = noise.map((off, i) => read(i, offset + rate * i + off))
      const { ratePerDay } = must(rateOf(clean)).segments[0] ?? {}
      expect(Math.abs((ratePerDay ?? Number.NaN) - rate)).toBeLessThan(0.1)
      const swayed = clean.map((one, i) =>
        wild.includes(i) ? { ...one, errorSeconds: one.errorSeconds + 3600 } : one,
      )
      const { robustRatePerDay } = must(rateOf(swayed)).segments[0] ?? {}
      expect(Math.abs((robustRatePerDay ?? Number.NaN) - rate)).toBeLessThan(0.3)
    }),
  )
})

test('unsorted, doubled and impossible readings are problems, each named', () => {
  const log = [
    read(1, 0),
    read(0, 0),
    read(0, Number.NaN),
    { at: '2026-02-30T00:00:00Z', errorSeconds: Number.POSITIVE_INFINITY },
    read(3, 0, { nutTurns: Number.NaN }),
    { at: '2026-03-04 09:00', errorSeconds: 0 },
  ]
  expect(refusals(rateOf(log))).toEqual([
    'date.notAnInstant readings[3].at',
    'date.notAnInstant readings[5].at',
    'rate.error readings[2].errorSeconds',
    'rate.error readings[3].errorSeconds',
    'rate.outOfOrder readings[1].at',
    'rate.sameTime readings[2].at',
    'reading.nutTurns readings[4].nutTurns',
  ])
})

test('a log too long to be judged is a problem, not a wait', () => {
  const log = (length: number) => Array.from({ length }, (_, i) => read(i / 100, 0))
  expect(refusals(rateOf(log(5001)))).toEqual(['rate.segmentTooLong readings'])
  expect(refusals(rateOf(log(20_001)))).toEqual(['rate.tooMany readings'])
})
