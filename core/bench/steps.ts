import { type Caution, type CautionFacts, cautionsFor } from '../cautions/cautions.ts'
import { type Chime, forms, type OrUnknown, type Strike } from '../vocabulary/clock.ts'
import { type AsFoundMark, asFoundMarks, type Task } from '../vocabulary/work.ts'

/** What the steps of a service depend on. */
export interface StepFacts extends CautionFacts {
  readonly strike: OrUnknown<Strike>
  readonly chime: OrUnknown<Chime>
}

/**
 * Cautions of the work itself, whatever the clock: NIOSH guideline for ammonia; safety data sheets of isopropyl alcohol,
 * flammable from 2.0 to 12.7 % in air (trade reference §8).
 */
export const workCautions = ['ammoniated-cleaner', 'alcohol'] as const

/** A caution shown at a step. */
export type StepCaution = Caution | (typeof workCautions)[number]

interface Rule {
  readonly task: Task
  readonly when?: (clock: StepFacts) => boolean
  /** Cautions that belong to the step itself; one of the clock's shows only where the clock calls for it. */
  readonly cautions?: readonly StepCaution[]
  /** Marks to write down at this step, and to look at again at a later one. */
  readonly marks?: readonly AsFoundMark[]
}

// A spring is let down first: where nobody has looked, the form's usual power decides.
const sprung = ({ form, power }: StepFacts): boolean =>
  ['spring', 'fusee'].includes(power === 'unknown' ? forms[form].power : power)
const sounding = ({ strike, chime }: StepFacts): boolean => strike !== 'none' || chime !== 'none'
const ofCleaning = [
  'silvered-dial',
  'painted-dial',
  'enamel-dial',
  'paper-dial',
  'jewels',
  'lead-weights',
] as const
const soundMarks = ['chime-barrel', 'gathering-pallet', 'hammers', 'count-wheel'] as const

/** The steps of a full service in working order. Common practice (trade reference §4, §7, §8). */
const rules = {
  'as-found': {
    task: 'assess',
    cautions: ['tall-case', 'dome', 'mercury'],
    marks: [...soundMarks, 'motion-work', 'springs'],
  },
  'let-down': { task: 'let-down', when: sprung, cautions: ['spring-power'] },
  strip: { task: 'strip', cautions: ['luminous', 'mains'] },
  'inspect-barrels': { task: 'strip', when: sprung },
  'inspect-pivots': { task: 'strip' },
  'inspect-jewels': { task: 'strip', when: clock => clock.jewelled, cautions: ['jewels'] },
  clean: { task: 'clean', cautions: [...ofCleaning, ...workCautions] },
  bush: { task: 'bush' },
  polish: { task: 'polish' },
  springs: { task: 'springs', when: sprung, cautions: ['spring-power'], marks: ['springs'] },
  assemble: { task: 'assemble', marks: [...soundMarks, 'motion-work'] },
  oil: { task: 'oil' },
  beat: { task: 'beat' },
  sound: { task: 'strike-chime', when: sounding, marks: soundMarks },
  hammers: { task: 'strike-chime', when: sounding, marks: ['hammers'] },
  'hands-by-trip': { task: 'strike-chime', when: ({ chime }) => chime !== 'none' && chime !== 'unknown' },
} as const satisfies Record<string, Rule>

/** A step's code; its sentence stands in the words catalogue. */
export type BenchStep = keyof typeof rules

/** One step of the service of a clock. */
export interface Step {
  readonly code: BenchStep
  readonly task: Task
  readonly cautions: readonly StepCaution[]
  readonly marks: readonly AsFoundMark[]
}

/** The steps that apply to a clock, in working order, each with the cautions that belong to it. */
export function stepsFor(clock: StepFacts): Step[] {
  const shown: readonly StepCaution[] = [...cautionsFor(clock), ...workCautions]
  return (Object.entries(rules) as [BenchStep, Rule][])
    .filter(([, rule]) => rule.when?.(clock) ?? true)
    .map(([code, { task, cautions = [], marks = [] }]) => ({
      code,
      task,
      cautions: cautions.filter(one => shown.includes(one)),
      marks,
    }))
}

/** Marks that only some clocks have. Common practice: a count wheel counts without a gathering pallet, a rack without a count wheel. */
const markedBy: Partial<Record<AsFoundMark, (clock: StepFacts) => boolean>> = {
  'chime-barrel': ({ chime }) => chime !== 'none',
  'gathering-pallet': ({ strike }) => strike === 'rack' || strike === 'unknown',
  'count-wheel': ({ strike }) => strike === 'count-wheel' || strike === 'unknown',
  hammers: sounding,
  springs: sprung,
}

/** The marks that a clock may have to be noted before its strip; all of them while nobody has looked. */
export const marksOf = (clock: StepFacts): AsFoundMark[] =>
  asFoundMarks.filter(mark => markedBy[mark]?.(clock) ?? true)
