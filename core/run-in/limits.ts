import { daySeconds } from '../calendar/units.ts'
import type { StrikePattern } from '../strike/blows.ts'
import type { Chime, Form, OrUnknown, Strike } from '../vocabulary/clock.ts'

/** How near and how steady a clock has to go before it is handed over. */
export interface RateLimits {
  /** The greatest rate either way, in seconds a day, after it was regulated. */
  readonly perDay: number
  /** The greatest scatter about its line, in seconds. */
  readonly steady: number
}

/** The same as a shop keeps them, decimal text. */
export interface LimitsSetting {
  readonly perDay: string
  readonly steady: string
}

/** The kinds of going that are judged apart. */
export const goings = [
  'seconds-pendulum',
  'wall-dead-beat',
  'weight-anchor',
  'spring-recoil',
  'platform',
  'cuckoo',
  'torsion',
  'verge',
] as const
export type Going = (typeof goings)[number]

const perWeek = (minutes: number): number => Math.round((minutes * 60) / 7)

/** Figures to begin with; each shop may set its own for a clock. From memory but where a source is named (docs/sources.md). */
export const usualLimits: Readonly<Record<Going, RateLimits>> = {
  'seconds-pendulum': { perDay: 3, steady: 1.5 },
  'wall-dead-beat': { perDay: 8, steady: 3 },
  'weight-anchor': { perDay: 15, steady: 5 },
  // Common practice: within four minutes a week.
  'spring-recoil': { perDay: perWeek(4), steady: 10 },
  platform: { perDay: 30, steady: 10 },
  // Common practice: one to three minutes a week.
  cuckoo: { perDay: perWeek(3), steady: 20 },
  // GO: five minutes a week is close.
  torsion: { perDay: perWeek(5), steady: 30 },
  verge: { perDay: 900, steady: 200 },
}

/** A clock by its kind, power and escapement, as codes or in the bench's everyday words. */
export interface HowItGoes {
  readonly kind: string
  readonly power: string
  readonly escapement: string
}

const deadBeats = new Set(['dead-beat', 'deadbeat', 'graham', 'pin-wheel'])
const balances = new Set([
  'platform-lever',
  'cylinder',
  'lever',
  'platform',
  'balance',
  'detent',
  'pin-pallet',
])

/** Whether a clock of this escapement goes by a balance, by its code or an everyday word. */
export const hasBalance = (escapement: string): boolean => balances.has(escapement)

const kinds: Readonly<Record<string, string>> = {
  '400-day': 'torsion',
  anniversary: 'torsion',
  grandfather: 'longcase',
  grandmother: 'longcase',
  shelf: 'mantel',
}

/** Everyday words as codes: `Dead beat` as `dead-beat`, `grandfather` as `longcase`. */
const coded = (word: string): string => {
  const code = word
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, '-')
  return kinds[code] ?? code
}

/** Which kind of going a clock is judged as; where escapement or power are not known, by what is usual for its kind. Common practice. */
export function goingOf(clock: HowItGoes): Going {
  const [kind, power, escapement] = [coded(clock.kind), coded(clock.power), coded(clock.escapement)]
  if (kind === 'torsion' || kind === 'cuckoo') return kind
  if (escapement === 'verge') return 'verge'
  if (hasBalance(escapement) || kind === 'carriage' || kind === 'ship') return 'platform'
  // Most lantern clocks were given an anchor; only while nobody has looked is one taken for a verge.
  if (kind === 'lantern' && escapement === 'unknown') return 'verge'
  if (deadBeats.has(escapement) && kind === 'wall') return 'wall-dead-beat'
  if (power === 'weight' || (power === 'unknown' && (kind === 'longcase' || kind === 'lantern')))
    return deadBeats.has(escapement) || kind === 'regulator' ? 'seconds-pendulum' : 'weight-anchor'
  return kind === 'regulator' ? 'wall-dead-beat' : 'spring-recoil'
}

/** Whether this can be a limit that a clock is held to, in seconds: a hundredth at least, for no dial tells less, and at most a whole day. */
export const isLimitPerDay = (secondsPerDay: number): boolean =>
  secondsPerDay >= 0.01 && secondsPerDay <= daySeconds

interface Sounding {
  readonly form: Form
  readonly strike: OrUnknown<Strike>
  readonly chime: OrUnknown<Chime>
}

/**
 * What the clock sounds by itself, as far as it follows from what is on record; null where it does not. Whether a plain hour strike
 * also marks the half hour is not on record, so `hours` here speaks for the full hours alone.
 */
export function patternOf({ form, strike, chime }: Sounding): StrikePattern | null {
  if (form === 'ship') return 'ship'
  if (strike === 'unknown') return null
  if (chime === 'four-quarter') return strike === 'none' ? 'four-quarter' : 'four-quarter-hours'
  return chime === 'none' && (strike === 'rack' || strike === 'count-wheel') ? 'hours' : null
}
