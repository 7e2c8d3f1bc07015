import fc from 'fast-check'
import { Temporal } from 'temporal-polyfill'
import { expect, test } from 'vitest'
import { civilDateOf, instantMs, instantOf, localOf } from '../../../core/calendar/zone.ts'

test('a time the clocks show twice is the first of the two', () => {
  expect(instantOf('2026-10-25T01:30', 'Europe/London')).toBe('2026-10-25T00:30:00.000Z')
})

test('a time the clocks skip is the first minute they show after it', () => {
  expect(instantOf('2026-03-29T01:30', 'Europe/London')).toBe('2026-03-29T01:00:00.000Z')
  expect(instantOf('2026-10-04T02:15', 'Australia/Lord_Howe')).toBe('2026-10-03T15:30:00.000Z')
  expect(instantOf('2011-12-30T12:00', 'Pacific/Apia')).toBe('2011-12-30T10:00:00.000Z')
})

test('the date is the shop’s, not that of UTC', () => {
  expect(civilDateOf('2026-11-25T23:30:00.000Z', 'Asia/Tokyo')).toBe('2026-11-26')
  expect(civilDateOf('2026-11-25T02:00:00.000Z', 'America/Los_Angeles')).toBe('2026-11-24')
})

const zones = fc.constantFrom(
  'UTC',
  'Europe/London',
  'America/New_York',
  'America/St_Johns',
  'Asia/Kolkata',
  'Asia/Kathmandu',
  'Australia/Lord_Howe',
  'Pacific/Apia',
  'Africa/Casablanca',
  'America/Santiago',
)
const minutes = fc.integer({ min: Date.UTC(1975, 0, 1) / 60_000, max: Date.UTC(2037, 0, 1) / 60_000 })

test('local times agree with Temporal in every zone', () => {
  fc.assert(
    fc.property(minutes, zones, (minute, zone) => {
      const instant = new Date(minute * 60_000).toISOString()
      const shown = Temporal.Instant.from(instant).toZonedDateTimeISO(zone).toPlainDateTime()
      expect(localOf(instant, zone)).toBe(shown.toString({ smallestUnit: 'minute', roundingMode: 'floor' }))
    }),
  )
})

test('instants agree with Temporal wherever the local time exists', () => {
  fc.assert(
    fc.property(minutes, zones, (minute, zone) => {
      const local = new Date(minute * 60_000).toISOString().slice(0, 16)
      const zoned = Temporal.PlainDateTime.from(local).toZonedDateTime(zone, { disambiguation: 'earlier' })
      fc.pre(zoned.toPlainDateTime().toString().slice(0, 16) === local)
      expect(instantOf(local, zone)).toBe(new Date(zoned.epochMilliseconds).toISOString())
    }),
  )
})

test.each([
  '2026-02-30T00:00:00Z',
  '2026-01-01T00:00:00',
  '2026-01-01T00:00:00+01:00',
  '2026-01-01',
  '2026-01-01T25:00Z',
  'now',
  '2026-01-01T24:00:00Z',
])('%j is no instant', text => {
  expect(instantMs(text)).toBeUndefined()
})

test('an instant is read with or without seconds and milliseconds', () => {
  for (const text of ['2026-11-25T09:00Z', '2026-11-25T09:00:00Z', '2026-11-25T09:00:00.000Z'])
    expect(instantMs(text)).toBe(Date.UTC(2026, 10, 25, 9))
})

test('a zone or time that does not exist is a bug and throws', () => {
  expect(() => localOf('2026-11-25T09:00:00.000Z', 'Mars/Olympus')).toThrow(RangeError)
  expect(() => instantOf('2026-11-25T24:00', 'UTC')).toThrow(RangeError)
})

test('what is skipped west of Greenwich is the first minute after it too', () => {
  expect(instantOf('2026-03-08T02:30', 'America/New_York')).toBe('2026-03-08T07:00:00.000Z')
})

test('what is no time, zone or instant is named', () => {
  expect(() => instantOf('2026-11-25T24:00', 'UTC')).toThrow('not a local time: 2026-11-25T24:00')
  expect(() => localOf('2026-11-25T09:00:00.000Z', 'Mars/Olympus')).toThrow('not a time zone: Mars/Olympus')
  expect(() => localOf('today', 'UTC')).toThrow('not an instant: today')
})
