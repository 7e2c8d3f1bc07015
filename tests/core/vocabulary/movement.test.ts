import { describe, expect, it, test } from 'vitest'
import { stepsFor } from '../../../core/bench/steps.ts'
import { cautionsFor } from '../../../core/cautions/cautions.ts'
import { patternOf } from '../../../core/run-in/limits.ts'
import { supposedMovement } from '../../../core/vocabulary/clock.ts'
import { setUpAdviceFor } from '../../../core/vocabulary/set-up-advice.ts'

const unseen = { trains: null, power: 'unknown', duration: 'unknown' } as const
const no = { jewelled: false, luminous: false, mercury: false, mains: false }

test('of a movement nobody has looked at, what is usual for its form is planned by; what is on record is not touched', () => {
  expect(supposedMovement({ form: 'cuckoo', ...unseen })).toEqual({
    trains: 2,
    power: 'weight',
    duration: '30-hour',
  })
  const seen = { trains: 3, power: 'fusee', duration: '31-day' } as const
  expect(supposedMovement({ form: 'cuckoo', ...seen })).toEqual(seen)
})

test('a spring nobody has looked for is warned of, and let down first, where the form usually has one', () => {
  const mantel = { form: 'mantel', ...unseen, dial: 'unknown', ...no } as const
  expect(cautionsFor(mantel)).toEqual(['spring-power'])
  const steps = stepsFor({
    ...mantel,
    escapement: 'unknown',
    strike: 'unknown',
    chime: 'unknown',
    chimeCorrects: false,
  }).map(({ code }) => code)
  expect(steps).toContain('let-down')
  expect(steps).toContain('sound')
  expect(cautionsFor({ ...mantel, power: 'weight' })).not.toContain('spring-power')
})

test('what a clock sounds does not follow while its strike or its chime is unknown', () => {
  expect(patternOf({ form: 'mantel', strike: 'unknown', chime: 'none' })).toBeNull()
  expect(patternOf({ form: 'mantel', strike: 'rack', chime: 'unknown' })).toBeNull()
  expect(patternOf({ form: 'mantel', strike: 'unknown', chime: 'four-quarter' })).toBeNull()
  expect(patternOf({ form: 'mantel', strike: 'rack', chime: 'none' })).toBe('hours')
})

test('an owner is told how to set a pendulum in beat and regulate it only of a clock that has one', () => {
  const mantel = {
    form: 'mantel',
    power: 'spring',
    strike: 'rack',
    chime: 'none',
    chimeCorrects: false,
    mercury: false,
  } as const
  expect(setUpAdviceFor({ ...mantel, escapement: 'unknown' })).toEqual(
    expect.arrayContaining(['level', 'beat', 'regulate', 'wind']),
  )
  for (const escapement of ['platform-lever', 'cylinder'] as const) {
    const advice = setUpAdviceFor({ ...mantel, escapement })
    expect(advice).toEqual(expect.arrayContaining(['level', 'wind']))
    expect(advice).not.toContain('beat')
    expect(advice).not.toContain('regulate')
  }
})

describe('the set-up advice of a kind of clock', () => {
  const bare = {
    form: 'mantel',
    power: 'unknown',
    strike: 'none',
    chime: 'none',
    chimeCorrects: false,
    escapement: 'unknown',
    mercury: false,
  } as const

  // Common practice.
  it.each([
    [
      'longcase',
      ['weights-off', 'level', 'fix-to-wall', 'wind-weights', 'beat', 'hands-forward-silent', 'regulate'],
    ],
    ['mantel', ['pendulum-off', 'level', 'wind', 'beat', 'hands-forward-silent', 'regulate']],
    [
      'cuckoo',
      ['weights-off-wall', 'cuckoo', 'level', 'wind-weights', 'beat', 'hands-forward-silent', 'regulate'],
    ],
    [
      'torsion',
      [
        'lift-dome',
        'torsion-lock',
        'level',
        'torsion-settle',
        'wind-year',
        'hands-forward-silent',
        'torsion-regulate',
      ],
    ],
    ['carriage', ['level', 'wind', 'hands-forward-silent', 'platform-regulate']],
    ['skeleton', ['lift-dome', 'pendulum-off', 'level', 'wind', 'beat', 'hands-forward-silent', 'regulate']],
  ] as const)('of a %s clock is right for it', (form, advice) => {
    expect(setUpAdviceFor({ ...bare, form })).toEqual([...advice, 'service-again'])
  })

  it('of a mains clock says nothing of winding or of the beat', () => {
    expect(setUpAdviceFor({ ...bare, power: 'mains' })).toEqual([
      'mains',
      'hands-forward-silent',
      'service-again',
    ])
    expect(setUpAdviceFor({ ...bare, form: 'longcase', power: 'mains' })).toContain('fix-to-wall')
  })

  it('of a mercury pendulum has nobody tie or lay it down', () => {
    const advice = setUpAdviceFor({ ...bare, form: 'wall', power: 'weight', mercury: true })
    expect(advice.slice(0, 2)).toEqual(['mercury-pendulum', 'weights-off-wall'])
    expect(advice).not.toContain('pendulum-off')
  })

  it('of a striking clock has the hands wait for each strike', () => {
    expect(setUpAdviceFor({ ...bare, strike: 'rack' })).toContain('hands-forward')
  })

  it('of a chime says whether it sets itself right', () => {
    const chiming = { ...bare, chime: 'four-quarter' } as const
    expect(setUpAdviceFor({ ...chiming, chimeCorrects: true })).toContain('chime-corrects')
    expect(setUpAdviceFor(chiming)).toContain('chime-set')
    expect(setUpAdviceFor(chiming)).not.toContain('chime-corrects')
  })
})
