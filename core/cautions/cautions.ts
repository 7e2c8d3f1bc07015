import { type Dial, driveOf, type Form, type OrUnknown, type Power } from '../vocabulary/clock.ts'

/** Facts about a clock from which cautions follow. */
export interface CautionFacts {
  readonly form: Form
  readonly power: OrUnknown<Power>
  readonly dial: OrUnknown<Dial> | null
  readonly jewelled: boolean
  readonly luminous: boolean
  readonly mercury: boolean
  readonly mains: boolean
}

/**
 * Every caution the shop knows, when it applies, and whether harm is possible (then it must be acknowledged before work).
 * Sources: trade reference §7–8 (common practice; US EPA radium and mercury pages; 29 CFR 1910.1025 and HSE manual handling from memory).
 * Each sentence defers to local codes and licensed practice.
 */
const rules = {
  'silvered-dial': { harm: false, when: (c: CautionFacts) => c.dial === 'silvered' },
  'painted-dial': { harm: false, when: (c: CautionFacts) => c.dial === 'painted' },
  'enamel-dial': {
    harm: false,
    when: (c: CautionFacts) => c.dial === 'vitreous-enamel' || c.dial === 'porcelain',
  },
  'paper-dial': { harm: false, when: (c: CautionFacts) => c.dial === 'paper' },
  jewels: { harm: false, when: (c: CautionFacts) => c.jewelled },
  'spring-power': {
    harm: true,
    when: (c: CautionFacts) => driveOf(c) === 'spring' || driveOf(c) === 'fusee',
  },
  'lead-weights': { harm: true, when: (c: CautionFacts) => driveOf(c) === 'weight' && c.form !== 'cuckoo' },
  'tall-case': { harm: true, when: (c: CautionFacts) => c.form === 'longcase' },
  dome: { harm: false, when: (c: CautionFacts) => c.form === 'torsion' || c.form === 'skeleton' },
  luminous: { harm: true, when: (c: CautionFacts) => c.luminous },
  mercury: { harm: true, when: (c: CautionFacts) => c.mercury },
  mains: { harm: true, when: (c: CautionFacts) => c.mains || c.power === 'mains' },
} as const

/** A caution's code; its sentence stands in the words catalogue. */
export type Caution = keyof typeof rules

/** Every caution code, in the order they are shown. */
export const cautions = Object.keys(rules) as readonly Caution[]

/** The cautions that follow from what is recorded of a clock, in showing order. */
export const cautionsFor = (clock: CautionFacts): Caution[] =>
  cautions.filter(code => rules[code].when(clock))

/** True when the caution must be acknowledged before the clock is worked on, because someone can be hurt. */
export const mustAcknowledge = (code: Caution): boolean => rules[code].harm
