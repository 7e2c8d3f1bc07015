import fc from 'fast-check'
import { expect, test } from 'vitest'
import { localMinute, localTime } from '../../../core/calendar/local.ts'
import {
  isOpen,
  isOpenOn,
  type WorkCalendar,
  type WorkWeek,
  workCalendar,
} from '../../../core/calendar/work.ts'
import type { RunInInput } from '../../../core/run-in/input.ts'
import { movements } from '../../../core/run-in/movement.ts'
import { runInPlan } from '../../../core/run-in/plan.ts'
import { runInDefaults } from '../../../core/run-in/policy.ts'
import { durations } from '../../../core/vocabulary/clock.ts'
import { must, refusals } from '../must.ts'

const weekdays: WorkWeek = [1, 2, 3, 4, 5].map(day => ({ day, from: '09:00', to: '17:00' }))
const everyDay: WorkWeek = [1, 2, 3, 4, 5, 6, 7].map(day => ({ day, from: '00:00', to: '24:00' }))

// 2026-03-02 is a Monday.
const input: RunInInput = {
  duration: '8-day',
  trains: 2,
  start: '2026-03-02T10:00',
  week: weekdays,
  holidays: [],
  policy: {
    stages: [
      { name: 'out of the case', winds: 1 },
      { name: 'in the case', winds: 1 },
    ],
    readingEveryDays: 7,
  },
}

test('an 8-day clock of two stages of one wind each runs a fortnight and is wound twice', () => {
  expect(must(runInPlan(input))).toEqual({
    stages: [
      { name: 'out of the case', from: '2026-03-02T10:00', to: '2026-03-09T10:00' },
      { name: 'in the case', from: '2026-03-09T10:00', to: '2026-03-16T10:00' },
    ],
    winds: ['2026-03-02T10:00', '2026-03-09T10:00'],
    readings: ['2026-03-09T10:00', '2026-03-16T10:00'],
    ready: '2026-03-16',
  })
})

test('a wind due on a holiday is done at the last open minute before', () => {
  const plan = must(runInPlan({ ...input, holidays: ['2026-03-09'] }))
  expect(plan.winds).toEqual(['2026-03-02T10:00', '2026-03-06T16:59', '2026-03-13T16:59'])
  expect(plan.readings).toEqual(['2026-03-10T09:00', '2026-03-16T10:00'])
})

test('a 30-hour clock stands over the weekend, and standing does not count', () => {
  const policy = { stages: [{ name: 'test', days: 4 }], readingEveryDays: 1 }
  const plan = must(runInPlan({ ...input, duration: '30-hour', start: '2026-03-05T10:00', policy }))
  // Wound Thursday and Friday 10:00, then early on Friday 16:59; stands from Saturday 22:59 to Monday 09:00.
  expect(plan.winds).toEqual([
    '2026-03-05T10:00',
    '2026-03-06T10:00',
    '2026-03-06T16:59',
    '2026-03-09T09:00',
    '2026-03-10T09:00',
  ])
  expect(plan.stages[0]?.to).toBe('2026-03-10T20:01')
  expect(plan.ready).toBe('2026-03-11')
})

test('a shop that is always open winds exactly when it is due', () => {
  const policy = { stages: [{ name: 'test', winds: 3 }], readingEveryDays: 1 }
  for (const duration of durations) {
    const plan = must(runInPlan({ ...input, duration, week: everyDay, policy }))
    const interval = movements[duration].windEveryDays * 1440
    const at = (localMinute(input.start) ?? 0) + 3 * interval
    expect(plan.winds).toHaveLength(3)
    expect(plan.stages[0]?.to).toBe(localTime(at))
    expect(plan.ready).toBe(localTime(at).slice(0, 10))
  }
})

test('a reading due on a closed day moves to the next open day at opening, and readings that fall together are one', () => {
  const policy = { stages: [{ name: 'test', days: 7 }], readingEveryDays: 1 }
  const plan = must(runInPlan({ ...input, start: '2026-03-05T10:00', policy }))
  expect(plan.readings).toEqual([
    '2026-03-06T10:00',
    '2026-03-09T09:00',
    '2026-03-09T10:00',
    '2026-03-10T10:00',
    '2026-03-11T10:00',
    '2026-03-12T10:00',
  ])
})

test('every default is a plan, says where it comes from, and covers a whole wind where the wind is a month or less', () => {
  for (const duration of durations) {
    const { policy, source } = runInDefaults[duration]
    expect(['shop policy', 'common practice']).toContain(source)
    const plan = must(runInPlan({ ...input, duration, week: everyDay, policy }))
    const ran = (localMinute(plan.stages.at(-1)?.to ?? '') ?? 0) - (localMinute(input.start) ?? 0)
    // Common practice: at least one full wind, two where the wind is 8 days or less; torsion several weeks.
    const asked = { '30-hour': 2, '8-day': 14, '14-day': 13, '31-day': 30, year: 21, '400-day': 21 }[duration]
    expect(ran / 1440).toBeGreaterThanOrEqual(asked)
  }
})

const openHours = fc
  .uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1, maxLength: 7 })
  .chain(days =>
    fc.tuple(
      ...days.map(day =>
        fc.tuple(fc.constant(day), fc.integer({ min: 0, max: 20 }), fc.integer({ min: 1, max: 3 })),
      ),
    ),
  )
  .map(list => list.map(([day, hour, length]) => ({ day, from: two(hour), to: two(hour + length) })))

const two = (hour: number) => `${String(hour).padStart(2, '0')}:00`

const plans = fc.record({
  duration: fc.constantFrom(...durations),
  trains: fc.integer({ min: 1, max: 3 }),
  start: fc
    .integer({ min: 0, max: 60 * 24 * 60 })
    .map(minutes => localTime((localMinute('2026-01-01T00:00') ?? 0) + minutes)),
  week: openHours,
  holidays: fc.array(
    fc
      .integer({ min: 0, max: 120 })
      .map(days => localTime((localMinute('2026-01-01T00:00') ?? 0) + days * 1440).slice(0, 10)),
    { maxLength: 20 },
  ),
  policy: fc.record({
    stages: fc.array(fc.record({ name: fc.constant('stage'), days: fc.integer({ min: 1, max: 20 }) }), {
      minLength: 1,
      maxLength: 3,
    }),
    readingEveryDays: fc.integer({ min: 1, max: 9 }),
  }),
})

test('a run-in never ends on a closed day, and winds and readings are made in open hours', () => {
  fc.assert(
    fc.property(plans, given => {
      const calendar = must(workCalendar(given))
      const plan = must(runInPlan(given))
      expect(isOpenOn(calendar, plan.ready)).toBe(true)
      expect(plan.winds[0]).toBe(given.start)
      for (const at of [...plan.winds.slice(1), ...plan.readings])
        expect([at, isOpen(calendar, at)]).toEqual([at, true])
      expect(plan.winds).toEqual([...new Set(plan.winds)].sort())
      expect(plan.readings).toEqual([...new Set(plan.readings)].sort())
    }),
  )
})

/** The last open minute before `due` and after `last`, or the first open one from `due` on, found minute by minute. */
function nextWindByMinutes(calendar: WorkCalendar, last: number, due: number): number {
  for (let at = due; at > last; at--) if (isOpen(calendar, localTime(at))) return at
  for (let at = due; ; at++) if (isOpen(calendar, localTime(at))) return at
}

test('stages and winds agree with letting the clock run minute by minute', () => {
  fc.assert(
    fc.property(plans, given => {
      fc.pre(given.duration !== '400-day' && given.duration !== 'year' && given.duration !== '31-day')
      const calendar = must(workCalendar(given))
      const { runningHours, windEveryDays } = movements[given.duration]
      const ends: string[] = []
      const winds = [given.start]
      let wound = localMinute(given.start) ?? 0
      let next = nextWindByMinutes(calendar, wound, wound + windEveryDays * 1440)
      let at = wound
      for (const stage of given.policy.stages) {
        for (let ran = 0; ran < stage.days * 1440; at++) {
          if (at === next) {
            wound = at
            winds.push(localTime(at))
            next = nextWindByMinutes(calendar, wound, wound + windEveryDays * 1440)
          }
          if (at < wound + runningHours * 60) ran++
        }
        ends.push(localTime(at))
      }
      const plan = must(runInPlan(given))
      expect(plan.stages.map(({ to }) => to)).toEqual(ends)
      expect(plan.winds).toEqual(winds)
    }),
    { numRuns: 25 },
  )
})

test('every problem of a plan is named at once', () => {
  const wrong = {
    ...input,
    week: [],
    trains: 0,
    start: '2026-03-02',
    holidays: ['2026-02-30'],
    policy: {
      stages: [{ name: ' ', winds: 1, days: 1 }, { name: 'x' }, { name: 'y', days: 0.5 }],
      readingEveryDays: 0,
    },
  }
  expect(refusals(runInPlan(wrong))).toEqual([
    'calendar.closedAllWeek week',
    'date.notADate holidays[0]',
    'date.notALocalTime start',
    'runIn.readingEveryDays policy.readingEveryDays',
    'runIn.stageLength policy.stages[2].days',
    'runIn.stageName policy.stages[0].name',
    'runIn.trains trains',
    'runIn.windsOrDays policy.stages[0]',
    'runIn.windsOrDays policy.stages[1]',
  ])
  expect(refusals(runInPlan({ ...input, policy: { stages: [], readingEveryDays: 1 } }))).toEqual([
    'runIn.noStage policy.stages',
  ])
})

test('a shop that never opens again is a problem, not a wait', () => {
  const closures = [{ from: '2026-03-03', to: '9999-12-31' }]
  expect(refusals(runInPlan({ ...input, closures }))).toEqual(['calendar.neverOpen week'])
  expect(refusals(runInPlan({ ...input, start: '9999-12-30T10:00' }))).toEqual(['calendar.neverOpen week'])
})
