import { describe, expect, it, test } from 'vitest'
import type { ShelfReading } from '../../../core/run-in/shelf-reading.ts'
import { faults, stillToShow, verdicts } from '../../../core/words/en/shelf.ts'
import { at, fortnight, judged, mantel, said } from './shelf-log.ts'

// Common practice: at least one full wind checking time and strike; never judge from one day; a fault starts the test again.

test('a fortnight observed, wound through, all hours struck right, in beat in its case, near enough and steady, may pass', () => {
  const result = judged(fortnight())
  expect(result).toMatchObject({
    verdict: 'may-pass',
    toShow: [],
    observedDays: 14,
    neededDays: 14,
    since: at(0),
    faults: [],
  })
  expect(result.ratePerDay).toBeCloseTo(3, 9)
  expect(result.scatterSeconds).toBeCloseTo(0, 9)
})

/** An hour that was not heard on its own day, heard on the thirteenth. */
const later = (hour: number) => ({ 13: { hour: { shown: hour, counted: hour } } })

test('of an empty log everything is still to be shown', () => {
  expect(said([])).toEqual(['not-yet', 'days', 'wind', 'hours-struck', 'beat-in-case', 'rate', 'steadiness'])
})

describe('days', () => {
  it('count only between readings at most one and a half times the interval apart', () => {
    const until = (day: number): ShelfReading[] => [
      { at: at(0), errorSeconds: 0, wound: true },
      { at: at(day), errorSeconds: 0 },
    ]
    expect(judged(until(1.5)).observedDays).toBe(1.5)
    expect(judged(until(1.51)).observedDays).toBe(0)
  })

  it('a clock read on days 1, 2 and 60 was observed for one day', () => {
    const readings = [1, 2, 60].map(day => ({ at: at(day), errorSeconds: 0, wound: day === 1 }))
    const result = judged(readings)
    expect(result.observedDays).toBe(1)
    expect(result.verdict).toBe('not-yet')
    expect(result.toShow.map(({ code }) => code)).toEqual(expect.arrayContaining(['days', 'wind', 'gap']))
  })

  it('on which the shop was closed count as watched', () => {
    const readings = fortnight({ 6: null, ...later(7) })
    expect(said(readings)).toEqual(['not-yet', 'days', 'gap'])
    const closedDays = (from: number, to: number) =>
      from <= Date.parse(at(5)) && to >= Date.parse(at(7)) ? 1 : 0
    expect(said(readings, { closedDays })).toEqual(['may-pass'])
  })

  it('a day that was missed is made up for by another at the end', () => {
    expect(said(fortnight({ 6: null, ...later(7) }, 16))).toEqual(['may-pass'])
    expect(said(fortnight({ 6: null, ...later(7) }, 15))).toEqual(['not-yet', 'days', 'gap'])
  })

  it('count up to an hour short of what the policy asks, not more', () => {
    const readAt = (late: number) => said(fortnight({ 14: { at: at(14 - late / 24) } }))
    expect(readAt(1)).toEqual(['may-pass'])
    expect(readAt(1.1)).toEqual(['not-yet', 'days'])
  })

  it('end with the last reading: long after it, the clock has to be read again', () => {
    expect(said(fortnight(), { now: at(15.5) })).toEqual(['may-pass'])
    expect(said(fortnight(), { now: at(15.6) })).toEqual(['not-yet', 'gap'])
  })

  it('in which a clock stood run down do not count', () => {
    const readings = [0, 1, 2, 3, 4, 5, 6, 7].map(day => ({ at: at(day), errorSeconds: 0, wound: day === 0 }))
    const found = { at: at(8.4), errorSeconds: -9000, stopped: true }
    const result = judged([...readings, found])
    expect(result.faults).toEqual([])
    expect(result.observedDays).toBe(8)
  })
})

describe('a whole wind', () => {
  it('is one from a wind to the next one due, all of it observed', () => {
    const unwound = { 7: { wound: false, event: 'cased' as const, inBeat: true }, 14: { wound: false } }
    expect(
      judged(fortnight({ ...unwound, 7: { ...unwound[7] }, 0: { wound: true } }, 8)).toShow.map(
        ({ code }) => code,
      ),
    ).not.toContain('wind')
    const broken = fortnight({ 3: null, 10: null, ...later(4), 12: { hour: { shown: 11, counted: 11 } } })
    expect(said(broken)).toEqual(['not-yet', 'days', 'wind', 'gap'])
  })

  it('is not asked for where the policy is shorter than one', () => {
    const policy = { stages: [{ name: 'test', days: 3 }], readingEveryDays: 1 }
    const clock = { ...mantel, durationDays: 400, strike: 'none' as const, setInBeat: false }
    expect(said(fortnight({}, 3), { policy, clock })).toEqual(['may-pass'])
  })
})

describe('a stop', () => {
  const stopped = fortnight({ 5: { stopped: true, errorSeconds: -4000, leftSeconds: 15 } })

  it('within the duration starts the test again', () => {
    const result = judged(stopped)
    expect(result).toMatchObject({
      verdict: 'begin-again',
      since: at(5),
      observedDays: 9,
      faults: [{ kind: 'stopped', at: at(5) }],
    })
  })

  it('is through when everything was shown since', () => {
    const longer = fortnight({ 5: { stopped: true, errorSeconds: -4000, leftSeconds: 15 } }, 21)
    expect(said(longer)).toEqual(['may-pass'])
  })

  it.each([
    [7.9, 1],
    [8, 0],
  ])('%d days after the wind of an 8-day movement is %d fault', (day, count) => {
    const found = [
      { at: at(0), errorSeconds: 0, wound: true },
      { at: at(day), errorSeconds: -100, stopped: true },
    ]
    expect(judged(found).faults).toHaveLength(count)
  })

  it('of a fourteen-day movement after nine days is one within its duration', () => {
    const found = [
      { at: at(0), errorSeconds: 0, wound: true },
      { at: at(9), errorSeconds: -100, stopped: true },
    ]
    expect(judged(found, { clock: { ...mantel, durationDays: 14 } }).faults).toHaveLength(1)
  })
})

describe('a clock that nobody winds', () => {
  const clock = { ...mantel, isWound: false, sprung: false }
  const unwound = fortnight(Object.fromEntries([0, 7, 14].map(day => [day, { wound: undefined }])))

  it('shows days and no wind, and any stop of it is a fault', () => {
    expect(said(unwound, { clock })).toEqual(['may-pass'])
    const stopped = [...unwound, { at: at(15), errorSeconds: -400, stopped: true }]
    expect(judged(stopped, { clock }).faults).toHaveLength(1)
  })
})

describe('the strike', () => {
  const wrong = { hour: { shown: 5, counted: 6 } }

  it('of a rack is a fault when it was wrong three times', () => {
    expect(judged(fortnight({ 4: wrong, 5: wrong })).faults).toEqual([])
    expect(judged(fortnight({ 4: wrong, 5: wrong })).wrongs).toHaveLength(2)
    expect(judged(fortnight({ 4: wrong, 5: wrong, 6: wrong })).faults).toEqual([
      { kind: 'miscounted', at: at(6), expected: 5, heard: 6 },
    ])
  })

  it('heard wrong has to be heard right again at that hour', () => {
    const result = judged(fortnight({ 13: { hour: { shown: 2, counted: 3 } } }))
    expect(result.toShow).toEqual([{ code: 'hours-struck', values: { hours: '2' } }])
    expect(said(fortnight({ 13: { hour: { shown: 2, counted: 3 } } }, 25))).toEqual(['may-pass'])
  })

  it('of a count wheel that is out of step is set right once; the second time is a fault', () => {
    const clock = { ...mantel, countWheel: true }
    const out = { hour: { shown: 5, counted: 4 } }
    const once = judged(fortnight({ 4: out, 5: out }), { clock })
    expect(once.faults).toEqual([])
    expect(once.wrongs.map(({ kind }) => kind)).toEqual(['outOfStep', 'outOfStep'])
    expect(judged(fortnight({ 4: out, 8: out }), { clock }).faults.map(({ kind }) => kind)).toEqual([
      'outOfStep',
    ])
  })

  it('of a count wheel is righted by a right half or by all twelve as well', () => {
    const clock = { ...mantel, countWheel: true }
    const out = { hour: { shown: 5, counted: 4 } }
    const righted = (how: Partial<ShelfReading>) =>
      judged(fortnight({ 4: out, 5: { hour: undefined, ...how }, 6: out }), { clock }).faults.length
    expect([righted({}), righted({ half: 1 }), righted({ twelveRight: true })]).toEqual([0, 1, 1])
  })

  it('or half hour, silence or repeat last heard wrong is asked for again', () => {
    expect(said(fortnight({ 13: { half: 0 } }))).toEqual(['not-yet', 'hours-struck'])
    expect(said(fortnight({ 12: { half: 0 }, 13: { half: 1 } }))).toEqual(['may-pass'])
    expect(said(fortnight({ 14: { hour: undefined, strikeRight: false } }))).toEqual([
      'not-yet',
      'hours-struck',
    ])
    expect(said(fortnight({ 13: { silent: false, repeats: false } }))).toEqual([
      'not-yet',
      'silent',
      'repeat',
    ])
    expect(said(fortnight({ 12: { silent: false }, 13: { silent: true } }))).toEqual(['may-pass'])
  })

  it('a ten of a four-quarter clock is ten blows: quarters are told apart', () => {
    const clock = { ...mantel, chime: true }
    const quarters = Object.fromEntries(
      [1, 2, 3, 4].map(which => [which, { quarter: { which: which as 1, right: true } }]),
    )
    const result = judged(fortnight({ ...quarters, 9: { hour: { shown: 10, counted: 10 } } }), { clock })
    expect(result.verdict).toBe('may-pass')
    expect(result.sheet.hours[10]).toEqual({ at: at(9), right: true })
  })

  it('at the half hour is one blow, of a plain strike also none', () => {
    const half = (counted: number) => judged(fortnight({ 4: { half: counted } })).wrongs.length
    expect([half(1), half(0), half(2)]).toEqual([0, 1, 1])
    const plain = { clock: { ...mantel, strike: 'hours' as const } }
    expect(
      [0, 1, 2].map(counted => judged(fortnight({ 4: { half: counted } }), plain).wrongs.length),
    ).toEqual([0, 0, 1])
  })

  it('may be heard through all hours one after another, the hands led on', () => {
    const silent = fortnight(
      Object.fromEntries(Array.from({ length: 15 }, (_, day) => [day, { hour: undefined }])),
    )
    expect(said(silent)).toEqual(['not-yet', 'hours-struck'])
    const led = silent.map((one, day) => (day === 3 ? { ...one, twelveRight: true } : one))
    expect(said(led)).toEqual(['may-pass'])
  })

  it('of ship’s bells has four counts to be heard, of a passing strike one', () => {
    const hours = (strike: 'ship' | 'passing', shown: readonly number[]) =>
      judged(
        shown.map((hour, day) => ({
          at: at(day),
          hour: { shown: hour, counted: strike === 'passing' ? 1 : (hour * 2) % 8 || 8 },
        })),
        { clock: { ...mantel, strike } },
      ).toShow.find(({ code }) => code === 'hours-struck')
    expect(hours('ship', [1, 2, 3])).toEqual({ code: 'hours-struck', values: { hours: '4' } })
    expect(hours('ship', [5, 6, 7, 8])).toBeUndefined()
    expect(hours('passing', [9])).toBeUndefined()
  })
})

describe('the chime', () => {
  const clock = { ...mantel, chime: true, chimeCorrects: true }
  const all = Object.fromEntries(
    [1, 2, 3, 4].map(which => [which, { quarter: { which: which as 1, right: true } }]),
  )

  it('has four quarters to be heard right, and to set itself right where it can', () => {
    expect(said(fortnight(), { clock })).toEqual(['not-yet', 'quarters', 'self-correction'])
    expect(said(fortnight(all), { clock })).toEqual(['not-yet', 'self-correction'])
    expect(said(fortnight({ ...all, 6: { selfCorrected: true } }), { clock })).toEqual(['may-pass'])
    expect(said(fortnight({ ...all, 6: { selfCorrected: false } }), { clock })).toEqual([
      'not-yet',
      'self-correction',
    ])
  })

  it('put wrong on purpose plays no wrong quarter', () => {
    const putWrong = { quarter: { which: 2 as const, right: false }, selfCorrected: true }
    const result = judged(fortnight({ ...all, 6: putWrong, 8: { quarter: { which: 2, right: true } } }), {
      clock,
    })
    expect(result).toMatchObject({ verdict: 'may-pass', wrongs: [] })
  })

  it('wrong three times is a fault', () => {
    const wrong = { quarter: { which: 3 as const, right: false } }
    expect(
      judged(fortnight({ 4: wrong, 5: wrong, 6: wrong }), { clock }).faults.map(({ kind }) => kind),
    ).toEqual(['chimeWrong'])
  })

  it('of a ting-tang strike has three quarters', () => {
    const tingTang = { clock: { ...mantel, strike: 'ting-tang' as const } }
    expect(said(fortnight(), tingTang)).toEqual(['not-yet', 'quarters'])
    expect(said(fortnight({ 1: all[1] ?? null, 2: all[2] ?? null, 3: all[3] ?? null }), tingTang)).toEqual([
      'may-pass',
    ])
  })
})

describe('the beat', () => {
  it('is looked at after it was cased', () => {
    expect(said(fortnight({ 7: { event: 'cased', inBeat: undefined } }))).toEqual(['not-yet', 'beat-in-case'])
    expect(said(fortnight({ 7: { event: 'cased', inBeat: false } }))).toEqual(['not-yet', 'beat-in-case'])
    expect(said(fortnight({ 7: { event: 'cased', inBeat: false }, 8: { inBeat: true } }))).toEqual([
      'may-pass',
    ])
    expect(said(fortnight({ 7: { event: undefined, inBeat: true } }))).toEqual(['not-yet', 'beat-in-case'])
  })

  it('is looked at again where it was moved; that it was cased outlives a fault', () => {
    const moved = { 10: { event: 'moved' as const } }
    expect(said(fortnight(moved))).toEqual(['not-yet', 'beat-in-case'])
    expect(said(fortnight({ ...moved, 11: { inBeat: true } }))).toEqual(['may-pass'])
    const stopped = { 9: { stopped: true, errorSeconds: -4000, leftSeconds: 27, inBeat: true } }
    expect(said(fortnight(stopped, 24))).toEqual(['may-pass'])
  })

  it('of a platform is none that the case could put out', () => {
    const clock = { ...mantel, setInBeat: false }
    expect(said(fortnight({ 7: { event: undefined, inBeat: undefined } }), { clock })).toEqual(['may-pass'])
  })
})

describe('rate and steadiness', () => {
  const going = (perDay: number, off: (day: number) => number = () => 0, days = 14) =>
    fortnight(
      Object.fromEntries(
        Array.from({ length: days + 1 }, (_, day) => [day, { errorSeconds: perDay * day + off(day) }]),
      ),
      days,
    )

  it('at its limit passes, beyond it is to be regulated', () => {
    expect(said(going(34))).toEqual(['may-pass'])
    expect(said(going(34.1))).toEqual(['regulate', 'rate'])
    expect(said(going(-34.1))).toEqual(['regulate', 'rate'])
  })

  it('beyond its limit by less than is known of it is judged at the end', () => {
    expect(said(going(34.1).slice(0, 12))).toContain('rate')
    expect(judged(going(34.1).slice(0, 12)).verdict).toBe('not-yet')
    expect(judged(going(60).slice(0, 12)).verdict).toBe('regulate')
  })

  it('a clock at +60 and −60 s a day in turn is no clock that goes right', () => {
    const result = judged(going(0, day => (day % 2 === 0 ? 0 : 60)))
    expect(result.verdict).toBe('not-yet')
    expect(result.toShow.map(({ code }) => code)).toContain('steadiness')
  })

  it('are judged since it was last touched, from three readings over two days', () => {
    const touched = (day: number) => said(fortnight({ [day]: { nutTurns: 0.5 } }))
    expect(touched(12)).toEqual(['may-pass'])
    expect(touched(13)).toEqual(['not-yet', 'rate'])
  })

  it('unsteadiness before a touch is not forgotten by it', () => {
    const wild = going(0, day => (day < 7 ? 80 * (day % 2) : 0))
    expect(judged(wild).toShow.map(({ code }) => code)).toContain('steadiness')
  })

  /** A spring gains early in each wind and loses late: nothing in all. */
  const curved = (swing: number) => (day: number) => {
    const age = day % 7
    return swing * age * (1 - age / 7)
  }

  it('the curve of a spring’s wind, the same in every wind, is no unsteadiness', () => {
    expect(said(going(0, curved(15)))).toEqual(['may-pass'])
    expect(judged(going(0, curved(15))).ratePerDay).toBeCloseTo(0, 0)
    const weights = { clock: { ...mantel, sprung: false } }
    expect(said(going(0, curved(15)), weights)).toContain('steadiness')
  })

  it('a curve beyond what a spring may do is unsteadiness all the same', () => {
    expect(said(going(0, curved(60)))).toContain('steadiness')
  })

  it('a rate that walks one way is not steady, however near its stretches lie to their lines', () => {
    const limits = { perDay: 15, steady: 5 }
    const clock = { ...mantel, sprung: false }
    expect(
      said(
        going(0, day => day ** 2 / 2),
        { clock, limits },
      ),
    ).toEqual(['not-yet', 'steadiness'])
    expect(said(going(-27, day => (3 * day ** 2) / 2))).toEqual(['not-yet', 'steadiness'])
    expect(
      said(
        going(0, day => day ** 2 / 20),
        { clock, limits },
      ),
    ).toEqual(['may-pass'])
  })

  it('a slip of a digit sways neither, and is named', () => {
    const result = judged(fortnight({ 10: { errorSeconds: 300 } }))
    expect(result).toMatchObject({ verdict: 'may-pass', slips: [at(10)] })
    expect(result.ratePerDay).toBeCloseTo(3, 6)
  })

  it('a last reading that is far off is no slip before another one says so', () => {
    expect(said(fortnight({ 14: { errorSeconds: 300 } }))).toEqual(['not-yet', 'steadiness'])
    expect(said(fortnight({ 14: { errorSeconds: 300 } }, 16))).toEqual(['may-pass'])
  })

  it('hands set are read as found and as left', () => {
    const set = fortnight({
      9: { leftSeconds: 0 },
      ...Object.fromEntries([10, 11, 12, 13, 14].map(day => [day, { errorSeconds: 3 * (day - 9) }])),
    })
    const result = judged(set)
    expect(result.verdict).toBe('may-pass')
    expect(result.ratePerDay).toBeCloseTo(3, 9)
  })
})

describe('the nut', () => {
  /** 40 s a day fast until the nut was turned once on the sixth day, 20 after. */
  const turned = (after: number) =>
    fortnight(
      Object.fromEntries(
        Array.from({ length: 15 }, (_, day) => [
          day,
          {
            errorSeconds: day <= 6 ? 40 * day : 240 + after * (day - 6),
            ...(day === 6 ? { nutTurns: 1 } : {}),
          },
        ]),
      ),
    )

  it('turns that bring it right are told in the sense of those given, and which way the bob goes', () => {
    const { suggest } = judged(turned(20))
    expect(suggest?.turns).toBeCloseTo(1, 6)
    expect(suggest?.bob).toBe('lower')
  })

  it('a clock that loses is made faster by raising the bob', () => {
    const { suggest } = judged(turned(-20))
    expect(suggest?.turns).toBeCloseTo(-1 / 3, 6)
    expect(suggest?.bob).toBe('raise')
  })

  it('nothing is suggested where the clock’s answer does not exceed what is unknown of it, nor where it goes well', () => {
    expect(judged(turned(40.2)).suggest).toBeNull()
    expect(judged(turned(1)).suggest).toBeNull()
    expect(judged(fortnight()).suggest).toBeNull()
  })

  it('one slip of a digit does not turn the suggestion round', () => {
    const log = turned(20).map((one, i) => (i === 10 ? { ...one, errorSeconds: 1000 } : one))
    expect(judged(log).suggest?.turns).toBeCloseTo(1, 6)
  })
})

test('every verdict, fault and thing to show is a plain sentence', () => {
  const values = {
    ratePerDay: '2',
    plusMinus: '1',
    scatterSeconds: '3',
    walkPerDay: '1',
    heard: '9',
    expected: '10',
  }
  for (const sentence of [
    ...Object.values(verdicts),
    ...Object.values(faults),
    ...Object.values(stillToShow),
  ]) {
    expect(
      sentence({
        ...values,
        faultOn: '2 Mar',
        limitPerDay: '5',
        observedDays: '1',
        neededDays: '2',
        windEveryDays: '7',
        hours: '2',
        quarters: '1',
        limitSeconds: '5',
        unobservedDays: '3',
      }),
    ).toMatch(/^[A-Z0-9].*\.$/)
  }
})
