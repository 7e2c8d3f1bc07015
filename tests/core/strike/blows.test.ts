import fc from 'fast-check'
import { expect, test } from 'vitest'
import { localMinute, localTime } from '../../../core/calendar/local.ts'
import { blowsAt, blowsBetween, type StrikePattern, strikePatterns } from '../../../core/strike/blows.ts'
import { must, refusals } from '../must.ts'

const over = (pattern: StrikePattern, hours: number, from = '2026-03-01T12:00') =>
  must(blowsBetween(pattern, from, localTime((localMinute(from) ?? 0) + hours * 60)))

// GO (striking), BK p. 197: hours. GO: hours and a single half. Calculated, GO "over 1000 a day": four-quarter with
// hours.
test.each<[StrikePattern, number, number, number, number]>([
  ['hours', 78, 156, 1092, 1248],
  ['hours-half', 90, 180, 1260, 1440],
  ['four-quarter', 480, 960, 6720, 7680],
  ['four-quarter-hours', 558, 1116, 7812, 8928],
])('%s: %d blows in 12 h, %d in 24 h, %d in 7 d, %d in 8 d', (pattern, half, whole, week, eight) => {
  expect([12, 24, 168, 192].map(hours => over(pattern, hours))).toEqual([half, whole, week, eight])
})

// Calculated: 1 to 8 bells in each of six watches.
test('ship’s bells are 216 a day, one at half past twelve and eight at four', () => {
  expect(over('ship', 24)).toBe(216)
  expect([30, 60, 240, 0, 720, 990].map(minute => blowsAt('ship', minute))).toEqual([1, 2, 8, 8, 8, 1])
})

// GO: a 30-hour train from 12 o'clock.
test('a 30-hour train from 12 o’clock strikes 177', () => {
  expect(over('hours', 30)).toBe(177)
})

// BK p. 204: 4, 8, 12, 16 notes, 40 an hour.
test('a four-quarter chime sounds 4, 8, 12 and 16 notes, 40 an hour', () => {
  expect([15, 30, 45, 60].map(minute => blowsAt('four-quarter', minute))).toEqual([4, 8, 12, 16])
  expect(over('four-quarter', 1)).toBe(40)
})

// GO: a single half-hour blow makes 12:30, 1:00 and 1:30 alike.
test('a single half-hour blow makes 12:30, 1:00 and 1:30 alike', () => {
  expect([30, 60, 90].map(minute => blowsAt('hours-half', minute))).toEqual([1, 1, 1])
})

test('a blow at the start is not counted, one at the end is', () => {
  expect(must(blowsBetween('hours', '2026-03-01T12:00', '2026-03-01T12:00'))).toBe(0)
  expect(must(blowsBetween('hours', '2026-03-01T11:59', '2026-03-01T12:00'))).toBe(12)
  expect(must(blowsBetween('hours', '2026-03-01T12:00', '2026-03-01T13:00'))).toBe(1)
})

test('blows agree with counting minute by minute', () => {
  const start = localMinute('2026-03-01T00:00') ?? 0
  fc.assert(
    fc.property(
      fc.constantFrom(...strikePatterns),
      fc.nat(100_000),
      fc.nat(12_000),
      (pattern, from, length) => {
        let counted = 0
        for (let at = start + from + 1; at <= start + from + length; at++)
          counted += blowsAt(pattern, at % 1440)
        expect(must(blowsBetween(pattern, localTime(start + from), localTime(start + from + length)))).toBe(
          counted,
        )
      },
    ),
    { numRuns: 60 },
  )
})

test('eight thousand years are counted at once', () => {
  expect(must(blowsBetween('hours', '1600-01-01T00:00', '9999-12-31T23:59'))).toBe(21 * 146_097 * 156 - 12)
})

test('a time that is none and an end before its beginning are problems', () => {
  expect(refusals(blowsBetween('hours', '2026-03-01', '2026-03-01T24:00'))).toEqual([
    'date.notALocalTime from',
    'date.notALocalTime to',
  ])
  expect(refusals(blowsBetween('hours', '2026-03-02T00:00', '2026-03-01T00:00'))).toEqual([
    'strike.endsBeforeItBegins to',
  ])
})
