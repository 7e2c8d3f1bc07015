import fc from 'fast-check'
import { expect, test } from 'vitest'
import { localMinute, localTime } from '../../../core/calendar/local.ts'
import {
  addWorkMinutes,
  isOpen,
  isOpenAt,
  isOpenOn,
  lastOpenMinute,
  nextOpen,
  type Opening,
  subtractWorkMinutes,
  type WorkWeek,
  workCalendar,
} from '../../../core/calendar/work.ts'
import { must, refusals } from '../must.ts'

const week: WorkWeek = [1, 2, 3, 4, 5].flatMap(day => [
  { day, from: '09:00', to: '12:30' },
  { day, from: '13:00', to: '17:00' },
])
const opening: Opening = { week, holidays: ['2026-12-25', '2026-12-28', '2027-01-01'] }
const calendar = must(workCalendar(opening))

// Standards reference §3, worked there.
test.each([
  ['2026-12-24T16:00', 120, '2026-12-29T10:00'],
  ['2026-12-23T11:00', 600, '2026-12-24T14:00'],
  ['2026-12-31T12:00', 60, '2026-12-31T13:30'],
  ['2026-12-26T10:00', 1, '2026-12-29T09:01'],
])('%s + %d open minutes is %s', (from, minutes, to) => {
  expect(must(addWorkMinutes(calendar, from, minutes))).toBe(to)
})

test('no minutes at all lead to the first open minute, and work that fills the day is done at closing', () => {
  expect(must(addWorkMinutes(calendar, '2026-12-26T10:00', 0))).toBe('2026-12-29T09:00')
  expect(must(addWorkMinutes(calendar, '2026-12-29T09:00', 450))).toBe('2026-12-29T17:00')
  expect(must(addWorkMinutes(calendar, '2026-12-29T17:00', 0))).toBe('2026-12-30T09:00')
})

test('hours are half-open: open at opening, shut at closing, in the break and on holidays', () => {
  expect(
    ['09:00', '12:29', '12:30', '13:00', '16:59', '17:00'].map(time =>
      isOpen(calendar, `2026-12-29T${time}`),
    ),
  ).toEqual([true, true, false, true, true, false])
  expect([
    isOpenOn(calendar, '2026-12-28'),
    isOpenOn(calendar, '2026-12-29'),
    isOpen(calendar, 'no'),
  ]).toEqual([false, true, false])
})

test('a closure shuts every day from its first to its last', () => {
  const closed = must(workCalendar({ ...opening, closures: [{ from: '2027-02-01', to: '2027-02-12' }] }))
  expect(must(nextOpen(closed, '2027-01-30T10:00'))).toBe('2027-02-15T09:00')
})

test('a shop may be open until midnight and through it', () => {
  const day = [1, 2, 3, 4, 5, 6, 7].map(weekday => ({ day: weekday, from: '00:00', to: '24:00' }))
  const always = must(workCalendar({ week: day, holidays: [] }))
  expect(must(addWorkMinutes(always, '2026-01-01T12:00', 1440))).toBe('2026-01-02T12:00')
  expect(must(addWorkMinutes(always, '2026-01-01T12:00', 720))).toBe('2026-01-02T00:00')
})

const times = fc
  .integer({ min: localMinute('2020-01-01T00:00') ?? 0, max: localMinute('2030-01-01T00:00') ?? 0 })
  .map(localTime)

test('open minutes agree with counting them one by one', () => {
  fc.assert(
    fc.property(times, fc.integer({ min: 1, max: 1500 }), (from, minutes) => {
      const to = must(addWorkMinutes(calendar, from, minutes))
      let open = 0
      for (let at = localMinute(from) ?? 0; at < (localMinute(to) ?? 0); at++)
        if (isOpenAt(calendar, at)) open++
      expect(open).toBe(minutes)
      expect(isOpen(calendar, localTime((localMinute(to) ?? 0) - 1))).toBe(true)
    }),
    { numRuns: 40 },
  )
})

test('adding work in two parts comes to the same as adding it at once', () => {
  fc.assert(
    fc.property(
      times,
      fc.integer({ min: 1, max: 100_000 }),
      fc.integer({ min: 1, max: 100_000 }),
      (from, a, b) => {
        const halfway = must(addWorkMinutes(calendar, from, a))
        expect(must(addWorkMinutes(calendar, halfway, b))).toBe(must(addWorkMinutes(calendar, from, a + b)))
      },
    ),
  )
})

test('subtracting work leads back into the open time it was added from', () => {
  fc.assert(
    fc.property(times, fc.integer({ min: 1, max: 100_000 }), (from, minutes) => {
      const to = must(addWorkMinutes(calendar, from, minutes))
      expect(must(subtractWorkMinutes(calendar, to, minutes))).toBe(must(nextOpen(calendar, from)))
    }),
  )
})

test.each<[string, WorkWeek, string[]]>([
  ['a shop closed all week', [], ['calendar.closedAllWeek week']],
  ['a day that is none', [{ day: 8, from: '09:00', to: '17:00' }], ['calendar.weekday week[0].day']],
  [
    'times that are none',
    [{ day: 1, from: '9:00', to: '25:00' }],
    ['calendar.time week[0].from', 'calendar.time week[0].to'],
  ],
  [
    'an end before its beginning',
    [{ day: 1, from: '17:00', to: '09:00' }],
    ['calendar.endsBeforeItBegins week[0].to'],
  ],
  [
    'hours that run into one another',
    [
      { day: 1, from: '09:00', to: '13:00' },
      { day: 1, from: '12:59', to: '17:00' },
    ],
    ['calendar.overlap week[1]'],
  ],
])('%s is a problem', (_what, hours, problems) => {
  expect(refusals(workCalendar({ week: hours, holidays: [] }))).toEqual(problems)
})

test('holidays and closures that are no dates are problems, each named', () => {
  const given = {
    week,
    holidays: ['2026-02-30'],
    closures: [
      { from: '2026-05-02', to: '2026-05-01' },
      { from: 'x', to: '2026-05-01' },
    ],
  }
  expect(refusals(workCalendar(given))).toEqual([
    'calendar.endsBeforeItBegins closures[0].to',
    'date.notADate closures[1].from',
    'date.notADate holidays[0]',
  ])
})

test('more work than the calendar holds is a problem and comes back at once', () => {
  expect(refusals(addWorkMinutes(calendar, '2026-01-01T00:00', Number.MAX_SAFE_INTEGER))).toEqual([
    'calendar.neverOpen from',
  ])
  expect(refusals(subtractWorkMinutes(calendar, '2026-01-01T00:00', Number.MAX_SAFE_INTEGER))).toEqual([
    'calendar.neverOpen to',
  ])
  const shut = must(workCalendar({ ...opening, closures: [{ from: '2026-01-01', to: '9999-12-31' }] }))
  expect(refusals(nextOpen(shut, '2026-01-01T00:00'))).toEqual(['calendar.neverOpen from'])
})

test.each([-1, 0.5, Number.NaN, Number.POSITIVE_INFINITY])('%d minutes are a problem', minutes => {
  expect(refusals(addWorkMinutes(calendar, '2026-13-01T00:00', minutes))).toEqual([
    'calendar.minutes minutes',
    'date.notALocalTime from',
  ])
})

const hours = (day: number, from: string, to: string) => ({ day, from, to })
const wrongWeek = (...entries: WorkWeek) => refusals(workCalendar({ week: entries, holidays: [] }))

test('a weekday is a whole number from 1 to 7', () => {
  expect([wrongWeek(hours(1, '09:00', '17:00')), wrongWeek(hours(7, '09:00', '17:00'))]).toEqual([[], []])
  for (const day of [0, 1.5, 8])
    expect(wrongWeek(hours(day, '09:00', '17:00'))).toEqual(['calendar.weekday week[0].day'])
})

test('open hours last a minute at least, and are told right by both their ends', () => {
  expect(wrongWeek(hours(1, '09:00', '09:01'))).toEqual([])
  expect(wrongWeek(hours(1, '09:00', '09:00'))).toEqual(['calendar.endsBeforeItBegins week[0].to'])
  expect(wrongWeek(hours(1, 'x', '09:00'))).toEqual(['calendar.time week[0].from'])
  expect(wrongWeek(hours(1, '09:00', 'x'))).toEqual(['calendar.time week[0].to'])
})

test('hours may touch and not overlap, in whatever order they are entered', () => {
  const [early, late] = [hours(1, '09:00', '12:30'), hours(1, '12:30', '17:00')]
  expect([wrongWeek(early, late), wrongWeek(late, early)]).toEqual([[], []])
  const before = hours(1, '08:00', '09:01')
  expect(wrongWeek(late, before, hours(2, '08:00', '09:00'), early)).toEqual(['calendar.overlap week[3]'])
  expect(wrongWeek(hours(2, '08:00', '17:00'), before, hours(1, '09:00', '10:00'))).toEqual([
    'calendar.overlap week[2]',
  ])
  expect(
    wrongWeek(hours(2, '09:00', '12:00'), hours(1, '10:00', '11:00'), hours(3, '09:30', '10:00')),
  ).toEqual([])
})

test('the order of a day’s stretches does not matter', () => {
  const turned = must(workCalendar({ ...opening, week: week.toReversed() }))
  expect(must(addWorkMinutes(turned, '2026-12-29T09:00', 300))).toBe('2026-12-29T14:30')
})

test('a closure of one day is one; before its first and after its last day the shop is open', () => {
  const closures = [{ from: '2027-02-02', to: '2027-02-02' }]
  const closed = must(workCalendar({ ...opening, closures }))
  expect(['2027-02-01', '2027-02-02', '2027-02-03'].map(on => isOpenOn(closed, on))).toEqual([
    true,
    false,
    true,
  ])
  expect(refusals(workCalendar({ ...opening, closures: [{ from: '2027-02-02', to: 'x' }] }))).toEqual([
    'date.notADate closures[0].to',
  ])
})

test('the last open minute before a time is the latest of that day’s stretches, and lies after the other time', () => {
  const last = (at: string, after: string) => {
    const minute = lastOpenMinute(calendar, localMinute(at) ?? 0, localMinute(after) ?? 0)
    return minute === undefined ? undefined : localTime(minute)
  }
  const before = '2026-12-21T10:00'
  expect(last('2026-12-29T18:00', before)).toBe('2026-12-29T16:59')
  expect(last('2026-12-29T12:45', before)).toBe('2026-12-29T12:29')
  expect(last('2026-12-29T09:01', before)).toBe('2026-12-29T09:00')
  expect(last('2026-12-29T09:00', before)).toBe('2026-12-24T16:59')
  expect(last('2026-12-29T09:01', '2026-12-29T09:00')).toBeUndefined()
  expect(last('2026-12-29T09:02', '2026-12-29T09:00')).toBe('2026-12-29T09:01')
})

test('work can be done up to the last minute of the calendar and from its first, not beyond', () => {
  const day = [1, 2, 3, 4, 5, 6, 7].map(weekday => hours(weekday, '00:00', '24:00'))
  const always = must(workCalendar({ week: day, holidays: [] }))
  expect(must(addWorkMinutes(always, '9999-12-31T00:00', 1439))).toBe('9999-12-31T23:59')
  expect(refusals(addWorkMinutes(always, '9999-12-31T00:00', 1440))).toEqual(['calendar.neverOpen from'])
  expect(must(subtractWorkMinutes(always, '1583-01-01T12:00', 720))).toBe('1583-01-01T00:00')
  expect(refusals(subtractWorkMinutes(always, '1583-01-01T12:00', 721))).toEqual(['calendar.neverOpen to'])
  // 1583 began on a Saturday.
  expect(refusals(subtractWorkMinutes(calendar, '1583-01-03T10:00', 61))).toEqual(['calendar.neverOpen to'])
})

test('minutes that are none are a problem at a time that exists, too', () => {
  expect(refusals(addWorkMinutes(calendar, '2026-01-05T10:00', -1))).toEqual(['calendar.minutes minutes'])
})
