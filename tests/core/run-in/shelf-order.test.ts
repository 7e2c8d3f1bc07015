import { describe, expect, it } from 'vitest'
import { beforeInQueue, moved } from '../../../core/bench/queue.ts'
import { duesDone } from '../../../core/run-in/dues.ts'
import { goingOf, patternOf, usualLimits } from '../../../core/run-in/limits.ts'
import { shelfLog, standingEntries } from '../../../core/run-in/log.ts'
import { nextOnRound } from '../../../core/run-in/round.ts'
import { blowsPerDay } from '../../../core/run-in/shown.ts'

const clock = (number: number, reading = true, wind = false) => ({ number, due: { reading, wind } })

describe('the round', () => {
  it('goes to the next clock that is due, over the end to the beginning, and ends where none is left', () => {
    const round = [clock(1), clock(2, false), clock(3, false, true), clock(4, false)]
    expect(nextOnRound(round, null)).toBe(1)
    expect(nextOnRound(round, 1)).toBe(3)
    expect(nextOnRound(round, 3)).toBe(1)
    expect(nextOnRound(round, 4)).toBe(1)
    expect(nextOnRound([clock(1), clock(2, false)], 1)).toBeNull()
  })

  it('counts a due as done by the first reading of its day or later, a wind by the first that wound', () => {
    const due = (id: number, kind: 'wind' | 'reading', dueAt: string) => ({ id, kind, dueAt })
    const done = duesDone(
      [
        due(1, 'reading', '2027-03-02T09:00:00.000Z'),
        due(2, 'wind', '2027-03-02T09:00:00.000Z'),
        due(3, 'reading', '2027-03-04T09:00:00.000Z'),
      ],
      [
        { at: '2027-03-02T07:00:00.000Z', wound: false, read: false },
        { at: '2027-03-02T08:00:00.000Z', wound: false, read: true },
        { at: '2027-03-03T09:00:00.000Z', wound: true, read: true },
      ],
      'Europe/London',
    )
    expect([...done.values()]).toEqual(['2027-03-02T08:00:00.000Z', '2027-03-03T09:00:00.000Z', null])
  })
})

describe('the log', () => {
  it('leaves out what was corrected, through a chain of corrections, and what was struck out', () => {
    const entry = (id: number, at: string, correctsId: number | null = null, withdrawn = false) => ({
      id,
      at,
      correctsId,
      withdrawn,
    })
    const log = [
      entry(1, 'a'),
      entry(2, 'c'),
      entry(3, 'b', 2),
      entry(4, 'b', 3),
      entry(5, 'd'),
      entry(6, 'd', 5, true),
    ]
    expect(standingEntries(log).map(({ id }) => id)).toEqual([1, 4])
  })

  it('has a correction, entered last, stand at the time of the reading it corrects', () => {
    const seen = {
      leftMs: null,
      event: null,
      hourShown: null,
      hourCounted: null,
      halfCounted: null,
      quarter: null,
      quarterRight: null,
      twelveRight: false,
      fourRight: false,
      selfCorrected: null,
      silent: null,
      repeats: null,
      inBeat: null,
      strikeRight: null,
      chimeRight: null,
    }
    const read = (id: number, day: number, errorMs: number, correctsId: number | null = null) => ({
      ...seen,
      id,
      at: `2027-03-0${day}T09:00:00.000Z`,
      errorMs,
      correctsId,
      withdrawn: false,
      wound: false,
      stopped: false,
      nutTurns: '',
    })
    const log = shelfLog([read(1, 1, 0), read(2, 2, 90_000), read(3, 3, 20_000), read(4, 2, 10_000, 2)])
    expect(log.map(({ errorSeconds }) => errorSeconds)).toEqual([0, 10, 20])
  })
})

describe('what a clock is held to', () => {
  // From memory but where the table in docs/run-in.md names a source.
  it.each([
    ['longcase', 'weight', 'dead-beat', 'seconds-pendulum', 3, 1.5],
    ['regulator', 'weight', 'unknown', 'seconds-pendulum', 3, 1.5],
    ['wall', 'weight', 'dead-beat', 'wall-dead-beat', 8, 3],
    ['wall', 'spring', 'dead-beat', 'wall-dead-beat', 8, 3],
    ['longcase', 'weight', 'recoil', 'weight-anchor', 15, 5],
    ['longcase', 'weight', 'unknown', 'weight-anchor', 15, 5],
    ['mantel', 'spring', 'recoil', 'spring-recoil', 34, 10],
    ['bracket', 'fusee', 'unknown', 'spring-recoil', 34, 10],
    ['wall', 'spring', 'recoil', 'spring-recoil', 34, 10],
    ['carriage', 'spring', 'platform-lever', 'platform', 30, 10],
    ['mantel', 'spring', 'platform-lever', 'platform', 30, 10],
    ['cuckoo', 'weight', 'recoil', 'cuckoo', 26, 20],
    ['torsion', 'spring', 'dead-beat', 'torsion', 43, 30],
    ['bracket', 'spring', 'verge', 'verge', 900, 200],
    ['lantern', 'weight', 'unknown', 'verge', 900, 200],
    ['lantern', 'weight', 'recoil', 'weight-anchor', 15, 5],
    ['lantern', 'spring', 'platform-lever', 'platform', 30, 10],
    ['400-day', 'spring', 'unknown', 'torsion', 43, 30],
    ['Grandfather', 'weight', 'Dead beat', 'seconds-pendulum', 3, 1.5],
  ])(
    '%s, %s, %s is judged as %s: within %d s a day, steady within %d s',
    (kind, power, escapement, going, perDay, steady) => {
      expect(goingOf({ kind, power, escapement })).toBe(going)
      expect(usualLimits[going as 'torsion']).toEqual({ perDay, steady })
    },
  )

  it('blows are expected only where they follow from what is on record', () => {
    const chiming = patternOf({ form: 'bracket', strike: 'rack', chime: 'four-quarter' })
    // GO: more than 1000 a day; four quarters with hours make 1116.
    expect(blowsPerDay(chiming)).toBe(1116)
    const plain = patternOf({ form: 'mantel', strike: 'count-wheel', chime: 'none' })
    expect(blowsPerDay(plain)).toBeNull()
    expect(patternOf({ form: 'wall', strike: 'none', chime: 'none' })).toBeNull()
    expect(blowsPerDay(patternOf({ form: 'ship', strike: 'rack', chime: 'none' }))).toBe(216)
  })
})

describe('the bench queue', () => {
  const facts = { number: 1, comeback: false, benchOrder: null, estimatedOn: null, goAheadAt: null }

  it('puts comebacks first, then the order given, the estimated date, the go-ahead, the number', () => {
    const queue = [
      { ...facts, number: 9 },
      { ...facts, number: 8, goAheadAt: '2027-03-01T09:00:00.000Z' },
      { ...facts, number: 7, estimatedOn: '2027-03-05' },
      { ...facts, number: 6, benchOrder: 2 },
      { ...facts, number: 5, benchOrder: 1 },
      { ...facts, number: 4, comeback: true },
    ]
    expect(queue.toSorted(beforeInQueue).map(({ number }) => number)).toEqual([4, 5, 6, 7, 8, 9])
  })

  it('moves a repair by places and no further than the ends', () => {
    expect(moved([1, 2, 3], 3, -1)).toEqual([1, 3, 2])
    expect(moved([1, 2, 3], 1, -1)).toEqual([1, 2, 3])
    expect(moved([1, 2, 3], 1, 9)).toEqual([2, 3, 1])
    expect(moved([1, 2, 3], 7, 1)).toEqual([1, 2, 3])
  })
})
