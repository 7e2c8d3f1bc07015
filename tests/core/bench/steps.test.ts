import { describe, expect, it } from 'vitest'
import {
  type BenchStep,
  benchSteps,
  marksOf,
  type StepFacts,
  stepsFor,
  workCautions,
} from '../../../core/bench/steps.ts'
import { cautions, cautionsFor } from '../../../core/cautions/cautions.ts'
import { asFoundMarks } from '../../../core/vocabulary/work.ts'
import { en } from '../../../core/words/en/index.ts'

const plain: StepFacts = {
  form: 'wall',
  power: 'weight',
  escapement: 'dead-beat',
  dial: 'brass',
  strike: 'none',
  chime: 'none',
  chimeCorrects: false,
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

// The order of a full service: common practice.
describe('the steps of a service', () => {
  it('of a plain weight clock leave out what it has not', () => {
    expect(codes(plain)).toEqual([
      'as-found',
      'weights-off',
      'pendulum-off',
      'out-of-case',
      'shake',
      'strip',
      'inspect-pivots',
      'clean',
      'polish',
      'bush',
      'wash-again',
      'assemble',
      'pallets',
      'lines',
      'oil',
      'hang',
      'beat',
    ])
  })

  it('of a chiming spring clock go from the marks as found to the sound sheet', () => {
    expect(codes({ ...chiming, chimeCorrects: true })).toEqual([
      'as-found',
      'sound-as-found',
      'pendulum-off',
      'out-of-case',
      'open-springs',
      'let-down',
      'shake',
      'strip',
      'inspect-barrels',
      'springs-out',
      'inspect-pivots',
      'clean',
      'polish',
      'bush',
      'wash-again',
      'springs',
      'assemble',
      'pallets',
      'sound',
      'oil',
      'hang',
      'beat',
      'hammers',
      'hands-by-trip',
      'sound-sheet',
      'self-correction',
    ])
  })

  it.each([
    [
      { form: 'carriage', escapement: 'platform-lever' },
      ['platform-off', 'platform-on'],
      ['pendulum-off', 'beat', 'pallets'],
    ],
    [
      { form: 'torsion', power: 'spring' },
      ['torsion-off', 'torsion-on', 'torsion-beat'],
      ['pendulum-off', 'beat', 'open-springs'],
    ],
    [{ form: 'skeleton', power: 'fusee' }, ['fusee-set-up', 'let-down'], ['open-springs']],
    [{ form: 'cuckoo', strike: 'count-wheel' }, ['cuckoo-work', 'weights-off'], ['hammers', 'let-down']],
    [{ form: 'mantel', power: 'spring' }, ['open-springs'], ['weights-off']],
    [
      { form: 'wall', power: 'mains' },
      ['electric', 'unplug'],
      ['pendulum-off', 'let-down', 'beat', 'pallets'],
    ],
    [{ form: 'cuckoo', power: 'spring' }, ['open-springs'], ['lines']],
    [{ strike: 'rack' }, ['sound', 'sound-sheet'], ['hands-by-trip', 'self-correction']],
  ] as const)('of %o have %j and not %j', (more, has, hasNot) => {
    const all = codes({ ...plain, ...more })
    expect(all).toEqual(expect.arrayContaining([...has]))
    expect(all.filter(code => (hasNot as readonly string[]).includes(code))).toEqual([])
  })

  it('finish pivots before bushing to them, and let down before anything comes off', () => {
    const order = codes({ ...chiming, form: 'carriage', escapement: 'platform-lever' })
    const pairs = [
      ['polish', 'bush'],
      ['bush', 'wash-again'],
      ['open-springs', 'let-down'],
      ['sound', 'oil'],
      ['let-down', 'platform-off'],
      ['platform-off', 'strip'],
      ['shake', 'strip'],
    ] as const
    for (const [first, second] of pairs) expect(order.indexOf(first)).toBeLessThan(order.indexOf(second))
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
    expect(at(chiming, 'springs-out')).toEqual(['spring-power'])
    expect(at(chiming, 'springs')).toEqual(['spring-power'])
    expect(at({ ...chiming, power: 'fusee' }, 'let-down')).toEqual(['spring-power', 'fusee-set-up'])
  })

  it('of cleaning are those of ammonia and alcohol for every clock, and of its own dial, jewels and weights', () => {
    expect(at({ ...plain, power: 'spring' }, 'clean')).toEqual(['ammoniated-cleaner', 'alcohol'])
    expect(at({ ...plain, dial: 'silvered', jewelled: true }, 'clean')).toEqual([
      'silvered-dial',
      'jewels',
      'lead-weights',
      'ammoniated-cleaner',
      'alcohol',
      'shellac',
    ])
  })

  it('leave none of the cautions of any clock without its step', () => {
    const all = (['silvered', 'painted', 'vitreous-enamel', 'paper'] as const).flatMap(dial =>
      (['longcase', 'torsion', 'cuckoo', 'carriage', 'mantel'] as const).flatMap(form =>
        (['spring', 'weight', 'fusee'] as const).map(
          (power): StepFacts => ({
            ...chiming,
            dial,
            form,
            power,
            escapement: form === 'carriage' ? 'platform-lever' : 'recoil',
            jewelled: true,
            luminous: true,
            mercury: form !== 'carriage' && form !== 'cuckoo',
            mains: true,
          }),
        ),
      ),
    )
    for (const clock of all) {
      const shown = new Set(stepsFor(clock).flatMap(step => step.cautions))
      expect(cautionsFor(clock).filter(one => !shown.has(one))).toEqual([])
    }
    const ever = new Set(all.flatMap(clock => stepsFor(clock).flatMap(step => step.cautions)))
    expect([...cautions, ...workCautions].filter(one => !ever.has(one))).toEqual([])
  })

  it('of the work stand only where they are needed', () => {
    expect(stepsFor(plain).flatMap(step => step.cautions)).toEqual([
      'lead-weights',
      'lead-weights',
      'ammoniated-cleaner',
      'alcohol',
      'lead-weights',
    ])
  })
})

it('every step is a plain sentence', () => {
  for (const code of benchSteps) expect(en.bench.steps[code]).toMatch(/^[A-Z].*\.$/)
})
