import {
  type Chime,
  driveOf,
  type Escapement,
  type Form,
  hasPlatform,
  type OrUnknown,
  type Power,
  type Strike,
} from './clock.ts'
import type { SetUpAdvice } from './work.ts'

/** What is on record of the clock that decides how it is set up. */
export interface SetUpFacts {
  readonly form: Form
  readonly power: OrUnknown<Power>
  readonly strike: OrUnknown<Strike>
  readonly chime: OrUnknown<Chime>
  readonly chimeCorrects: boolean
  readonly escapement: OrUnknown<Escapement>
  /** Whether its pendulum holds mercury. */
  readonly mercury: boolean
}

/** What comes off before it is carried. */
function carried(clock: SetUpFacts): SetUpAdvice[] {
  const { form } = clock
  const weights = driveOf(clock) === 'weight'
  if (clock.mercury) return ['mercury-pendulum', ...(weights ? (['weights-off-wall'] as const) : [])]
  if (form === 'longcase' || form === 'lantern') return ['weights-off']
  if (weights) return ['weights-off-wall']
  return hasPlatform(clock) ? [] : ['pendulum-off']
}

/** How it is carried and stood, before it goes. */
function standing(clock: SetUpFacts): SetUpAdvice[] {
  const { form } = clock
  if (form === 'torsion') return ['lift-dome', 'torsion-lock', 'level', 'torsion-settle']
  const chained = form === 'cuckoo' && driveOf(clock) === 'weight'
  return [
    ...(form === 'skeleton' ? (['lift-dome'] as const) : []),
    ...carried(clock),
    ...(chained ? (['cuckoo'] as const) : []),
    'level',
    ...(form === 'longcase' ? (['fix-to-wall'] as const) : []),
  ]
}

function winding(clock: SetUpFacts): SetUpAdvice[] {
  const drive = driveOf(clock)
  if (drive === 'electric-rewind') return []
  if (clock.form === 'torsion') return ['wind-year']
  return drive === 'weight' ? ['wind-weights'] : ['wind']
}

/** Whether it sounds anything that the hands have to wait for. */
const sounds = ({ strike, chime }: SetUpFacts): boolean => strike !== 'none' || chime !== 'none'

const setting = (clock: SetUpFacts): SetUpAdvice => (sounds(clock) ? 'hands-forward' : 'hands-forward-silent')

const regulating = (clock: SetUpFacts): SetUpAdvice =>
  clock.form === 'torsion' ? 'torsion-regulate' : hasPlatform(clock) ? 'platform-regulate' : 'regulate'

function sounding({ strike, chime, chimeCorrects }: SetUpFacts): SetUpAdvice[] {
  const chimes = chime !== 'none' && chime !== 'unknown'
  return [
    ...(strike === 'count-wheel' ? (['strike-out-of-step'] as const) : []),
    ...(chimes ? ([chimeCorrects ? 'chime-corrects' : 'chime-set'] as const) : []),
  ]
}

/** What the owner should know to set this clock up at home, in reading order. A mains clock is neither wound nor set in beat. Common practice. */
export const setUpAdviceFor = (clock: SetUpFacts): SetUpAdvice[] =>
  clock.power === 'mains'
    ? [
        'mains',
        ...(clock.form === 'longcase' ? (['fix-to-wall'] as const) : []),
        setting(clock),
        ...sounding(clock),
        'service-again',
      ]
    : [
        ...standing(clock),
        ...winding(clock),
        ...(clock.form === 'torsion' || hasPlatform(clock) ? [] : (['beat'] as const)),
        setting(clock),
        regulating(clock),
        ...sounding(clock),
        'service-again',
      ]
