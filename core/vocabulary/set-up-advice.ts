import type { Form, OrUnknown, Strike } from './clock.ts'
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

/** What the owner should know to set this clock up at home, in reading order. Common practice. */
export const setUpAdviceFor = (form: Form, strike: OrUnknown<Strike>): SetUpAdvice[] => [
  ...byForm[form],
  ...always,
  ...(strike === 'count-wheel' ? (['strike-out-of-step'] as const) : []),
]
