import type { Chime, Duration, Escapement, Form, OrUnknown, Power, Strike } from '../vocabulary/clock.ts'
import { supposedMovement } from '../vocabulary/clock.ts'
import { hasBalance } from './limits.ts'
import { durationDays } from './movement.ts'

/** What a clock sounds on the hour and half hour; `unknown` where nobody has looked yet. */
export type Sounds = 'none' | 'hours' | 'hours-half' | 'ship' | 'ting-tang' | 'passing' | 'unknown'

/** What a clock on the shelf is, as far as its log is judged by it. */
export interface ShelfClock {
  readonly durationDays: number
  readonly strike: Sounds
  /** A count wheel can go out of step with the hands, a rack cannot (GO). */
  readonly countWheel: boolean
  /** Whether it plays at the four quarters; null where nobody has looked yet. */
  readonly chime: boolean | null
  /** Whether the chime sets itself right after it was put wrong. */
  readonly chimeCorrects: boolean
  /** Whether a spring drives it: such a clock gains early in its wind and loses late. */
  readonly sprung: boolean
  /** Whether it is wound at all: a motor is not, and has no duration that it could run down in. */
  readonly isWound: boolean
  /** Whether it has a beat that is set by the case it stands in: pendulums and torsion clocks have one, a platform or a motor has none. */
  readonly setInBeat: boolean
}

interface Described {
  readonly form: Form
  readonly trains: number | null
  readonly power: OrUnknown<Power>
  readonly duration: OrUnknown<Duration>
  readonly escapement: OrUnknown<Escapement>
  readonly strike: OrUnknown<Strike>
  readonly chime: OrUnknown<Chime>
  readonly chimeCorrects: boolean
}

/** The clock of a record. A plain strike may sound the half hour or not: that is not on record, and `hours` allows both. */
export function shelfClock(clock: Described): ShelfClock {
  const supposed = supposedMovement(clock)
  return {
    durationDays: durationDays[supposed.duration],
    sprung: isSprung(supposed.power),
    isWound: isWoundBy(supposed.power),
    strike: soundsOf(clock),
    countWheel: clock.strike === 'count-wheel',
    chime: clock.chime === 'unknown' ? null : clock.chime === 'four-quarter' || clock.chime === 'melody',
    chimeCorrects: clock.chimeCorrects,
    setInBeat: isSetInBeat(clock.power, clock.escapement, clock.form),
  }
}

function soundsOf({ form, strike, chime }: Described): Sounds {
  if (form === 'ship' && strike !== 'none') return 'ship'
  if (chime === 'ting-tang') return 'ting-tang'
  return strike === 'rack' || strike === 'count-wheel' ? 'hours' : strike
}

const platforms = new Set(['carriage', 'ship'])
const motors = new Set(['mains', 'battery', 'quartz'])
const unwound = new Set([...motors, 'electric-rewind', 'electric'])

/** Whether a spring drives the clock. */
export const isSprung = (power: string): boolean => power === 'spring' || power === 'fusee'

/** Whether the clock is wound by anybody. */
export const isWoundBy = (power: string): boolean => !unwound.has(power)

/** Whether the beat has to be looked at where the clock stands, by codes or everyday words for its power, escapement and kind. */
export const isSetInBeat = (power: string, escapement: string, kind: string): boolean =>
  !motors.has(power) && !hasBalance(escapement) && !(platforms.has(kind) && escapement === 'unknown')
