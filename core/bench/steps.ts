import type { Caution } from '../cautions/cautions.ts'
import { type Chime, type Form, forms, type OrUnknown, type Power, type Strike } from '../vocabulary/clock.ts'
import type { AsFoundMark, Task } from '../vocabulary/work.ts'

/** What the steps of a service depend on. */
export interface StepFacts {
  readonly form: Form
  readonly power: OrUnknown<Power>
  readonly strike: OrUnknown<Strike>
  readonly chime: OrUnknown<Chime>
  readonly jewelled: boolean
}

interface Rule {
  readonly task: Task
  readonly when?: (clock: StepFacts) => boolean
  /** The caution that belongs to the step itself. */
  readonly caution?: Caution
  /** Marks to write down at this step, and to look at again at a later one. */
  readonly marks?: readonly AsFoundMark[]
}

// A spring is let down first: where nobody has looked, the form's usual power decides.
const sprung = ({ form, power }: StepFacts): boolean =>
  ['spring', 'fusee'].includes(power === 'unknown' ? forms[form].power : power)
const sounding = ({ strike, chime }: StepFacts): boolean => strike !== 'none' || chime !== 'none'
const soundMarks = ['chime-barrel', 'gathering-pallet', 'hammers', 'count-wheel'] as const

/** The steps of a full service in working order. Common practice (trade reference §4, §7, §8). */
const rules = {
  'as-found': { task: 'assess', marks: [...soundMarks, 'motion-work', 'springs'] },
  'let-down': { task: 'let-down', when: sprung, caution: 'spring-power' },
  strip: { task: 'strip' },
  'inspect-barrels': { task: 'strip', when: sprung },
  'inspect-pivots': { task: 'strip' },
  'inspect-jewels': { task: 'strip', when: clock => clock.jewelled, caution: 'jewels' },
  clean: { task: 'clean' },
  bush: { task: 'bush' },
  polish: { task: 'polish' },
  springs: { task: 'springs', when: sprung, caution: 'spring-power', marks: ['springs'] },
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
  readonly caution: Caution | null
  readonly marks: readonly AsFoundMark[]
}

/** The steps that apply to a clock, in working order. */
export const stepsFor = (clock: StepFacts): Step[] =>
  (Object.entries(rules) as [BenchStep, Rule][])
    .filter(([, rule]) => rule.when?.(clock) ?? true)
    .map(([code, { task, caution = null, marks = [] }]) => ({ code, task, caution, marks }))
