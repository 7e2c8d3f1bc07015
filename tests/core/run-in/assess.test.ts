import { expect, test } from 'vitest'
import { type AssessmentInput, runInAssessment, type ShelfReading } from '../../../core/run-in/assess.ts'
import { expectedRates } from '../../../core/run-in/expected-rate.ts'
import { runInDefaults } from '../../../core/run-in/policy.ts'
import { shownFigures } from '../../../core/run-in/shown.ts'
import { stillToShow, troubles, verdicts } from '../../../core/words/en/shelf.ts'
import { must, refusals } from '../must.ts'

const base: Omit<AssessmentInput, 'readings'> = {
  duration: '8-day',
  strike: 'rack',
  pattern: 'hours-half',
  chimes: false,
  policy: runInDefaults['8-day'].policy,
  limitSecondsPerDay: 10,
}

const at = (day: number) => new Date(Date.UTC(2026, 2, 2, 10) + day * 86_400_000).toISOString()

/** A log of a reading a day, 3 s a day fast, wound each week, the strike right; `more` changes single days. */
const log = (days: number, more: Readonly<Record<number, Partial<ShelfReading>>> = {}): ShelfReading[] =>
  Array.from({ length: days + 1 }, (_, day) => ({
    at: at(day),
    errorSeconds: 3 * day,
    wound: day % 7 === 0,
    strikeRight: true,
    ...more[day],
  }))

const assess = (readings: readonly ShelfReading[], more: Partial<AssessmentInput> = {}) =>
  must(runInAssessment({ ...base, ...more, readings }))

const codes = (readings: readonly ShelfReading[], more: Partial<AssessmentInput> = {}) => {
  const { verdict, stillToShow: missing } = assess(readings, more)
  return [verdict.code, ...missing.map(({ code }) => code)]
}

// Common practice (trade reference §5): at least one full wind checking time and strike; never judge from one day.
test('a fortnight with the strike right, a whole wind and a rate within the limit may pass', () => {
  const result = assess(log(14))
  expect(result.verdict).toEqual({
    code: 'mayPass',
    values: {
      ratePerDay: 3,
      limitPerDay: 10,
      suggestedTurns: null,
      ranDays: 14,
      neededDays: 14,
      since: at(0),
    },
  })
  expect(result.stillToShow).toEqual([])
  expect(result.rate.netPerWind).toEqual([21, 21])
})

test('no rate is shown from minutes apart, where a second misheard is a minute a day', () => {
  const hourly = (hours: number) =>
    Array.from({ length: hours + 1 }, (_, hour) => ({
      at: at(hour / 24),
      errorSeconds: hour,
      strikeRight: true,
    }))
  expect(shownFigures(assess(hourly(5)))).toMatchObject({ ratePerDay: null, trendOverWind: null })
  expect(shownFigures(assess(hourly(6))).ratePerDay).toBe(24)
})

test('there is never a verdict from one day, however many readings it had', () => {
  const oneDay = Array.from({ length: 25 }, (_, hour) => ({
    at: at(hour / 24),
    errorSeconds: hour * 60,
    strikeRight: true,
  }))
  expect(codes(oneDay)).toEqual(['tooSoon', 'running', 'wholeWind', 'readings'])
  const policy = { stages: [{ name: 'short', days: 1 }], readingEveryDays: 1 }
  expect(codes(log(1), { policy })).toEqual(['tooSoon', 'readings'])
})

test('before anything is read there is nothing to say', () => {
  expect(codes([])).toEqual(['nothingRead', 'running', 'wholeWind', 'readings', 'strike'])
})

test('what is well so far but not long enough goes on', () => {
  expect(codes(log(6))).toEqual(['goOn', 'running', 'wholeWind'])
  expect(codes(log(8))).toEqual(['goOn', 'running'])
})

test('a rate beyond the limit is to be regulated, with turns from the clock’s own answer to the nut', () => {
  const readings = [
    ...[0, 1, 2].map(day => ({ at: at(day), errorSeconds: 60 * day })),
    ...[3, 4, 5, 6].map(day => ({
      at: at(day),
      errorSeconds: 20 * (day - 3),
      ...(day === 3 ? { handsSet: true, nutTurns: -1 } : {}),
    })),
  ]
  const { verdict } = assess(readings)
  expect(verdict).toMatchObject({ code: 'regulate', values: { ratePerDay: 20, limitPerDay: 10 } })
  expect(verdict.values.suggestedTurns).toBeCloseTo(-0.5, 12)
})

test('one wild reading does not make a clock to be regulated', () => {
  expect(assess(log(14, { 9: { errorSeconds: 900 } })).verdict.code).toBe('mayPass')
})

test('a stop starts the test again, and the days before it no longer count', () => {
  expect(codes(log(14, { 14: { stopped: true } }))).toEqual([
    'startAgain',
    'running',
    'wholeWind',
    'readings',
  ])
  const result = assess(log(20, { 10: { stopped: true } }))
  expect(result.troubles).toEqual([{ kind: 'stopped', at: at(10) }])
  expect(result.verdict).toMatchObject({ code: 'goOn', values: { ranDays: 10, since: at(10) } })
})

test('a clock that stood because its wind had run out has not failed, and standing does not count', () => {
  const weekend = log(6, { 3: { stopped: true, wound: true } }).filter((_, day) => day !== 2)
  const every = weekend.map(reading => ({ ...reading, wound: true }))
  const result = assess(every, { duration: '30-hour' })
  expect(result.troubles).toEqual([])
  // Wound at day 1, found standing at day 3: 30 hours of the 48 were run.
  expect(result.verdict.values.ranDays).toBeCloseTo(6 - 18 / 24, 12)
})

// GO: count-wheel striking can go out of step with the hands, rack striking cannot.
test('a wrong count is a count wheel out of step, or a fault of a rack', () => {
  const heard = { 5: { strikeRight: undefined, heard: { at: '03:00', blows: 4 } } }
  const of = (strike: 'count-wheel' | 'rack') => assess(log(6, heard), { strike }).troubles
  expect(of('count-wheel')).toEqual([{ kind: 'outOfStep', at: at(5), expected: 3, heard: 4 }])
  expect(of('rack')).toEqual([{ kind: 'miscounted', at: at(5), expected: 3, heard: 4 }])
})

test('a count no hour has is a miscount of a count wheel too', () => {
  const { troubles: found } = assess(log(6, { 5: { heard: { at: '03:00', blows: 13 } } }), {
    strike: 'count-wheel',
  })
  expect(found.map(({ kind }) => kind)).toEqual(['miscounted'])
})

test('the right count at the time heard shows the strike right', () => {
  const silent = log(14).map(({ strikeRight: _, ...reading }) => reading)
  expect(codes(silent)).toEqual(['goOn', 'strike'])
  const counted = silent.map((reading, day) =>
    day === 9 ? { ...reading, heard: { at: '12:30', blows: 1 } } : reading,
  )
  expect(codes(counted)).toEqual(['mayPass'])
})

test('a chiming clock has to be heard chiming right, and one out of beat does not pass', () => {
  expect(codes(log(14), { chimes: true })).toEqual(['goOn', 'chime'])
  expect(codes(log(14, { 14: { chimeRight: true } }), { chimes: true })).toEqual(['mayPass'])
  expect(codes(log(14, { 9: { chimeRight: false } }), { chimes: true })).toContain('chime')
  expect(codes(log(14, { 3: { inBeat: true }, 12: { inBeat: false } }))).toEqual(['goOn', 'beat'])
})

test('a clock whose strike or chime nobody has looked at has to be heard right, or described, before it passes', () => {
  const silent = log(14).map(({ heard: _, strikeRight: __, ...reading }) => reading)
  expect(codes(silent, { strike: 'unknown', pattern: null })).toEqual(['goOn', 'sounds'])
  expect(codes(log(14), { chimes: null })).toEqual(['goOn', 'sounds'])
  expect(codes(log(14, { 14: { strikeRight: true } }), { strike: 'unknown', pattern: null })).toEqual([
    'mayPass',
  ])
})

test('a clock that does not strike owes no strike', () => {
  expect(
    codes(
      log(14).map(({ strikeRight: _, ...reading }) => reading),
      { strike: 'none', pattern: null },
    ),
  ).toEqual(['mayPass'])
})

// Common practice (trade reference §5): spring clocks gain early and lose late in the wind.
test('a clock that gains early and loses late has a falling trend over the wind', () => {
  const spring = log(14).map((reading, day) => {
    const since = day % 7
    return {
      ...reading,
      errorSeconds: 12 * since - 2 * since * since + (day >= 7 ? -14 * Math.floor(day / 7) : 0),
    }
  })
  expect(assess(spring).trendOverWind).toBeCloseTo(-4, 1)
  expect(assess(log(14)).trendOverWind).toBeCloseTo(0, 9)
  expect(assess(log(2)).trendOverWind).toBeNull()
})

test('turning the nut does not start the test again but asks for a rate anew', () => {
  expect(codes(log(14, { 13: { nutTurns: 0.25 } }))).toEqual(['tooSoon', 'readings'])
})

// GO: torsion clocks 5 min a week, a well-made pendulum 1 min a month. Common practice: the others.
test('what may be expected of a clock, by type', () => {
  const perWeek = (type: keyof typeof expectedRates) => (expectedRates[type].secondsPerDay * 7) / 60
  expect(perWeek('torsion')).toBeCloseTo(5, 12)
  expect(perWeek('recoil')).toBeCloseTo(5, 12)
  expect(perWeek('mantel')).toBeCloseTo(4, 12)
  expect(perWeek('cuckoo')).toBeCloseTo(3, 12)
  expect(perWeek('antique')).toBeCloseTo(1, 12)
  expect([expectedRates.pendulum.secondsPerDay, expectedRates.lantern.secondsPerDay]).toEqual([2, 900])
})

test('every verdict, trouble and thing still to show has its words', () => {
  const result = assess(log(6, { 5: { heard: { at: '03:00', blows: 4 } } }))
  const { verdict } = assess(log(14))
  expect(verdicts[verdict.code](verdict.values)).toBe('May pass: 3 s a day over 14 days.')
  expect(result.troubles.map(trouble => troubles[trouble.kind]({ ...trouble }))).toEqual(['Struck 4 for 3.'])
  expect(result.stillToShow.map(({ code, values }) => stillToShow[code](values))).toContain(
    '14 days of running: so far 1.',
  )
})

test('every problem of an assessment is named at once', () => {
  const readings: ShelfReading[] = [
    { at: at(1), errorSeconds: 0, heard: { at: '24:00', blows: -1 } },
    { at: at(0), errorSeconds: 0 },
  ]
  const policy = { stages: [], readingEveryDays: 1 }
  expect(refusals(runInAssessment({ ...base, policy, limitSecondsPerDay: 0, readings }))).toEqual([
    'date.notATime readings[0].heard.at',
    'rate.outOfOrder readings[1].at',
    'runIn.limitPerDay limitSecondsPerDay',
    'runIn.noStage policy.stages',
    'strike.blows readings[0].heard.blows',
  ])
})
