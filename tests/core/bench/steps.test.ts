import { describe, expect, it } from 'vitest'
import { type BenchStep, marksOf, type StepFacts, stepsFor, workCautions } from '../../../core/bench/steps.ts'
import { cautions, cautionsFor } from '../../../core/cautions/cautions.ts'
import { asFoundMarks } from '../../../core/vocabulary/work.ts'
import { en } from '../../../core/words/en/index.ts'

const plain: StepFacts = {
  form: 'wall',
  power: 'weight',
  dial: 'brass',
  strike: 'none',
  chime: 'none',
  jewelled: false,
  luminous: false,
  mercury: false,
  mains: false,
}
const chiming: StepFacts = {
  ...plain,
  form: 'bracket',
  power: 'spring',
  strike: 'rack',
  chime: 'four-quarter',
}

const codes = (clock: StepFacts) => stepsFor(clock).map(({ code }) => code)
const at = (clock: StepFacts, code: BenchStep) =>
  stepsFor(clock).find(step => step.code === code)?.cautions ?? []

// The order of a full service: common practice (trade reference §4, §7, §8).
describe('the steps of a service', () => {
  it('of a jewelled chiming spring clock are all there, from the marks as found to hands set by the trip', () => {
    expect(codes({ ...chiming, jewelled: true })).toEqual(Object.keys(en.bench.steps))
  })

  it('of a clock leave out what it has not', () => {
    expect(codes(plain)).toEqual([
      'as-found',
      'strip',
      'inspect-pivots',
      'clean',
      'bush',
      'polish',
      'assemble',
      'oil',
      'beat',
    ])
    expect(codes({ ...plain, strike: 'rack' })).toEqual(expect.arrayContaining(['sound', 'hammers']))
    expect(codes({ ...plain, strike: 'rack' })).not.toContain('hands-by-trip')
  })

  it('tell the marks found before the strip again at the assembly, and at the setting of strike and chime', () => {
    const marks = (code: BenchStep) => stepsFor(chiming).find(step => step.code === code)?.marks
    const sounding = ['chime-barrel', 'gathering-pallet', 'hammers', 'count-wheel']
    expect(marks('as-found')).toEqual([...sounding, 'motion-work', 'springs'])
    expect(marks('assemble')).toEqual([...sounding, 'motion-work'])
    expect(marks('sound')).toEqual(sounding)
    expect(marks('hammers')).toEqual(['hammers'])
  })
})

describe('the marks to be noted before the strip', () => {
  it('are those the clock can have, and all of them while nobody has looked', () => {
    expect(marksOf({ ...plain, strike: 'rack', power: 'spring' })).toEqual([
      'gathering-pallet',
      'hammers',
      'motion-work',
      'springs',
      'other',
    ])
    expect(marksOf({ ...chiming, strike: 'count-wheel' })).toContain('chime-barrel')
    expect(marksOf({ ...chiming, strike: 'count-wheel' })).not.toContain('gathering-pallet')
    expect(marksOf({ ...chiming, strike: 'unknown', chime: 'unknown' })).toEqual([...asFoundMarks])
  })
})

describe('the cautions of a step', () => {
  it('of spring power stand where a spring is let down and where one is fitted', () => {
    expect(at(chiming, 'let-down')).toEqual(['spring-power'])
    expect(at(chiming, 'springs')).toEqual(['spring-power'])
  })

  it('of cleaning are those of ammonia and alcohol for every clock, and of its own dial, jewels and weights', () => {
    expect(at({ ...plain, power: 'spring' }, 'clean')).toEqual(['ammoniated-cleaner', 'alcohol'])
    expect(at({ ...plain, dial: 'silvered', jewelled: true }, 'clean')).toEqual([
      'silvered-dial',
      'jewels',
      'lead-weights',
      'ammoniated-cleaner',
      'alcohol',
    ])
  })

  it('leave none of the cautions of any clock without its step', () => {
    const all = (['silvered', 'painted', 'vitreous-enamel', 'paper'] as const).flatMap(dial =>
      (['longcase', 'torsion'] as const).flatMap(form =>
        (['spring', 'weight'] as const).map(
          (power): StepFacts => ({
            ...chiming,
            dial,
            form,
            power,
            jewelled: true,
            luminous: true,
            mercury: true,
            mains: true,
          }),
        ),
      ),
    )
    for (const clock of all) {
      const shown = new Set(stepsFor(clock).flatMap(step => step.cautions))
      expect([...cautionsFor(clock), ...workCautions].filter(one => !shown.has(one))).toEqual([])
    }
    expect(new Set(all.flatMap(cautionsFor))).toEqual(new Set(cautions))
  })
})
