import { daySeconds } from '../calendar/units.ts'
import type { StrikePattern } from '../strike/blows.ts'
import type { Chime, Escapement, Form, OrUnknown, Power, Strike } from '../vocabulary/clock.ts'
import { expectedRates } from './expected-rate.ts'

interface Going {
  readonly form: Form
  readonly power: OrUnknown<Power>
  readonly escapement: OrUnknown<Escapement>
}

const byForm: Partial<Record<Form, keyof typeof expectedRates>> = {
  torsion: 'torsion',
  cuckoo: 'cuckoo',
  lantern: 'lantern',
  longcase: 'antique',
  bracket: 'mantel',
  mantel: 'mantel',
}

/** The greatest rate a clock of this kind is handed over with unless the shop says otherwise, in whole seconds a day as text. */
export function usualLimitPerDay({ form, power, escapement }: Going): string {
  const spring = power === 'spring' && escapement === 'recoil'
  const key = byForm[form] ?? (spring ? 'recoil' : 'mantel')
  return String(Math.round(expectedRates[key].secondsPerDay))
}

/** Whether this can be the greatest rate a clock is handed over with, in seconds a day: above 0, and at most a whole day. */
export const isLimitPerDay = (secondsPerDay: number): boolean =>
  secondsPerDay > 0 && secondsPerDay <= daySeconds

interface Sounding {
  readonly form: Form
  readonly strike: OrUnknown<Strike>
  readonly chime: OrUnknown<Chime>
}

/**
 * What the clock sounds by itself, as far as it follows from what is on record; null where it does not. Whether a plain hour strike
 * also marks the half hour is not on record, so `hours` here speaks for the full hours alone (see `isKnownAt`).
 */
export function patternOf({ form, strike, chime }: Sounding): StrikePattern | null {
  if (form === 'ship') return 'ship'
  if (strike === 'unknown') return null
  if (chime === 'four-quarter') return strike === 'none' ? 'four-quarter' : 'four-quarter-hours'
  return chime === 'none' && (strike === 'rack' || strike === 'count-wheel') ? 'hours' : null
}

/** Whether the blows due at a time on the dial, `HH:MM`, are known: of a plain hour strike only those at the full hour. */
export const isKnownAt = (pattern: StrikePattern | null, at: string): boolean =>
  pattern !== null && (pattern !== 'hours' || at.endsWith(':00'))
