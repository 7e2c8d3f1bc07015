import type { Escapement, Form, OrUnknown, Strike } from './clock.ts'
import type { SetUpAdvice } from './work.ts'

const always: SetUpAdvice[] = ['wind', 'hands-forward', 'service-again']
const pendulum: SetUpAdvice[] = ['level', 'beat', 'regulate']
const byForm: Record<Form, SetUpAdvice[]> = {
  longcase: ['weights-off', 'fix-to-wall', ...pendulum],
  bracket: pendulum,
  mantel: pendulum,
  wall: pendulum,
  cuckoo: pendulum,
  carriage: [],
  torsion: ['lift-dome', 'level', 'beat'],
  lantern: ['weights-off', ...pendulum],
  skeleton: ['lift-dome', ...pendulum],
  ship: [],
  novelty: [],
  other: [],
}

/** Escapements with a balance: such a clock has no pendulum, whatever its form, and is neither set in beat nor regulated by its owner. */
const withBalance: readonly OrUnknown<Escapement>[] = ['platform-lever', 'cylinder']
const ofPendulum: readonly SetUpAdvice[] = ['beat', 'regulate']

/** What is on record of the clock that decides how it is set up. */
export interface SetUpFacts {
  readonly form: Form
  readonly strike: OrUnknown<Strike>
  readonly escapement: OrUnknown<Escapement>
}

/** What the owner should know to set this clock up at home, in reading order. Common practice. */
export const setUpAdviceFor = ({ form, strike, escapement }: SetUpFacts): SetUpAdvice[] => [
  ...byForm[form].filter(advice => !withBalance.includes(escapement) || !ofPendulum.includes(advice)),
  ...always,
  ...(strike === 'count-wheel' ? (['strike-out-of-step'] as const) : []),
]
