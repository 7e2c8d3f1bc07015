import { type Caution, type CautionFacts, cautionsFor } from '../cautions/cautions.ts'
import {
  type Chime,
  driveOf,
  type Escapement,
  hasPlatform,
  type OrUnknown,
  type Strike,
} from '../vocabulary/clock.ts'
import { type AsFoundMark, asFoundMarks, type Task } from '../vocabulary/work.ts'

/** What the steps of a service depend on. */
export interface StepFacts extends CautionFacts {
  readonly escapement: OrUnknown<Escapement>
  readonly strike: OrUnknown<Strike>
  readonly chime: OrUnknown<Chime>
  readonly chimeCorrects: boolean
}

/**
 * Cautions of the work itself. NIOSH guideline for ammonia; safety data sheets of isopropyl alcohol, flammable from 2.0 to 12.7 % in
 * air; the others common practice.
 */
export const workCautions = [
  'ammoniated-cleaner',
  'alcohol',
  'shellac',
  'open-springs',
  'fusee-set-up',
  'platform',
  'torsion',
  'cuckoo',
] as const

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

const sprung = (clock: StepFacts): boolean => driveOf(clock) === 'spring' || driveOf(clock) === 'fusee'
const weighted = (clock: StepFacts): boolean => driveOf(clock) === 'weight'
const fusee = (clock: StepFacts): boolean => driveOf(clock) === 'fusee'
const electric = (clock: StepFacts): boolean => ['electric-rewind', 'mains'].includes(driveOf(clock))
const torsion = ({ form }: StepFacts): boolean => form === 'torsion'
const cuckoo = ({ form }: StepFacts): boolean => form === 'cuckoo'
const withPendulum = (clock: StepFacts): boolean =>
  !torsion(clock) && !hasPlatform(clock) && driveOf(clock) !== 'mains'
// Whether springs stand open, without a barrel, is not on record.
const perhapsOpen = (clock: StepFacts): boolean => driveOf(clock) === 'spring' && !torsion(clock)
const sounding = ({ strike, chime }: StepFacts): boolean => strike !== 'none' || chime !== 'none'
const chiming = ({ chime }: StepFacts): boolean => chime !== 'none' && chime !== 'unknown'
const ofCleaning = [
  'silvered-dial',
  'painted-dial',
  'enamel-dial',
  'paper-dial',
  'jewels',
  'lead-weights',
] as const
const soundMarks = ['chime-barrel', 'gathering-pallet', 'hammers', 'count-wheel'] as const

/** The steps of a full service in working order, each for the kinds of movement that have it. Common practice. */
const rules = {
  'as-found': {
    task: 'assess',
    cautions: ['tall-case', 'dome', 'mains'],
    marks: [...soundMarks, 'motion-work', 'springs'],
  },
  'sound-as-found': { task: 'assess', when: sounding },
  unplug: { task: 'assess', when: electric, cautions: ['mains'] },
  'weights-off': { task: 'assess', when: weighted, cautions: ['lead-weights', 'cuckoo'] },
  'pendulum-off': { task: 'assess', when: withPendulum, cautions: ['mercury'] },
  'torsion-off': { task: 'assess', when: torsion, cautions: ['torsion', 'mercury'] },
  'out-of-case': { task: 'assess', cautions: ['luminous', 'mains'] },
  'open-springs': { task: 'let-down', when: perhapsOpen, cautions: ['open-springs'] },
  'let-down': { task: 'let-down', when: sprung, cautions: ['spring-power', 'fusee-set-up'] },
  shake: { task: 'strip' },
  'platform-off': { task: 'strip', when: hasPlatform, cautions: ['platform'] },
  strip: { task: 'strip' },
  'inspect-barrels': { task: 'strip', when: sprung },
  'springs-out': { task: 'springs', when: sprung, cautions: ['spring-power'] },
  'inspect-pivots': { task: 'strip' },
  'inspect-jewels': {
    task: 'strip',
    when: clock => clock.jewelled || hasPlatform(clock),
    cautions: ['jewels'],
  },
  clean: { task: 'clean', cautions: [...ofCleaning, 'luminous', 'ammoniated-cleaner', 'alcohol', 'shellac'] },
  polish: { task: 'polish' },
  bush: { task: 'bush' },
  'wash-again': { task: 'clean' },
  springs: { task: 'springs', when: sprung, cautions: ['spring-power'], marks: ['springs'] },
  assemble: { task: 'assemble', marks: [...soundMarks, 'motion-work'] },
  pallets: { task: 'assemble', when: clock => !hasPlatform(clock) && driveOf(clock) !== 'mains' },
  'fusee-set-up': { task: 'assemble', when: fusee },
  lines: { task: 'assemble', when: weighted },
  'platform-on': { task: 'assemble', when: hasPlatform },
  'cuckoo-work': { task: 'assemble', when: cuckoo, cautions: ['cuckoo'] },
  electric: { task: 'assemble', when: electric, cautions: ['mains'] },
  sound: { task: 'strike-chime', when: sounding, marks: soundMarks },
  oil: { task: 'oil' },
  'torsion-on': { task: 'assemble', when: torsion, cautions: ['torsion'] },
  hang: {
    task: 'case',
    when: clock => weighted(clock) || withPendulum(clock),
    cautions: ['tall-case', 'lead-weights', 'mercury'],
  },
  beat: { task: 'beat', when: withPendulum },
  'torsion-beat': { task: 'beat', when: torsion },
  hammers: { task: 'strike-chime', when: clock => sounding(clock) && !cuckoo(clock), marks: ['hammers'] },
  'hands-by-trip': { task: 'strike-chime', when: chiming },
  'sound-sheet': { task: 'strike-chime', when: sounding },
  'self-correction': { task: 'strike-chime', when: clock => chiming(clock) && clock.chimeCorrects },
} as const satisfies Record<string, Rule>

/** A step's code; its sentence stands in the words catalogue. */
export type BenchStep = keyof typeof rules

/** Every step there is. */
export const benchSteps = Object.keys(rules) as [BenchStep, ...BenchStep[]]

/** One step of the service of a clock. */
export interface Step {
  readonly code: BenchStep
  readonly task: Task
  readonly cautions: readonly StepCaution[]
  readonly marks: readonly AsFoundMark[]
}

/** Whether a caution of the work concerns this clock. */
function applies(caution: (typeof workCautions)[number], clock: StepFacts): boolean {
  if (caution === 'fusee-set-up') return fusee(clock)
  if (caution === 'cuckoo') return cuckoo(clock)
  return caution !== 'shellac' || clock.jewelled || hasPlatform(clock) || clock.escapement === 'brocot'
}

/** The steps that apply to a clock, in working order, each with the cautions that belong to it. */
export function stepsFor(clock: StepFacts): Step[] {
  const shown: readonly StepCaution[] = [
    ...cautionsFor(clock),
    ...workCautions.filter(one => applies(one, clock)),
  ]
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
