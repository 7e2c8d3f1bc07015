import { expect, test } from 'vitest'
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
  const steps = stepsFor({ ...mantel, strike: 'unknown', chime: 'unknown' }).map(({ code }) => code)
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
  const mantel = { form: 'mantel', strike: 'rack' } as const
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
