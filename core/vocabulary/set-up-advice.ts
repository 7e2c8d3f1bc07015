import {
  type Chime,
  type Escapement,
  type Form,
  forms,
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
}

/** Escapements with a balance: such a clock has no pendulum, whatever its form. */
const withBalance: readonly OrUnknown<Escapement>[] = ['platform-lever', 'cylinder']
const platforms: readonly Form[] = ['carriage', 'ship']

const hasBalance = ({ form, escapement }: SetUpFacts): boolean =>
  withBalance.includes(escapement) || (escapement === 'unknown' && platforms.includes(form))

/** How it is carried and stood, before it goes. */
function standing(clock: SetUpFacts): SetUpAdvice[] {
  const { form } = clock
  if (form === 'torsion') return ['lift-dome', 'torsion-lock', 'level', 'torsion-settle']
  const carried: SetUpAdvice[] =
    form === 'longcase' || form === 'lantern' ? ['weights-off'] : hasBalance(clock) ? [] : ['pendulum-off']
  return [
    ...(form === 'skeleton' ? (['lift-dome'] as const) : []),
    ...carried,
    ...(form === 'longcase' ? (['fix-to-wall'] as const) : []),
    ...(form === 'cuckoo' ? (['cuckoo'] as const) : []),
    'level',
    ...(hasBalance(clock) ? [] : (['beat'] as const)),
  ]
}

function winding({ form, power }: SetUpFacts): SetUpAdvice[] {
  const drive = power === 'unknown' ? forms[form].power : power
  if (drive === 'electric-rewind') return []
  return drive === 'weight' ? ['wind-weights'] : ['wind']
}

const regulating = (clock: SetUpFacts): SetUpAdvice =>
  clock.form === 'torsion' ? 'torsion-regulate' : hasBalance(clock) ? 'platform-regulate' : 'regulate'

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
    ? ['mains', 'service-again']
    : [
        ...standing(clock),
        ...winding(clock),
        'hands-forward',
        regulating(clock),
        ...sounding(clock),
        'service-again',
      ]
