import { type RateLimits, usualLimits } from '../../../core/run-in/limits.ts'
import { runInDefaults } from '../../../core/run-in/policy.ts'
import type { ShelfClock } from '../../../core/run-in/shelf-clock.ts'
import type { ShelfReading } from '../../../core/run-in/shelf-reading.ts'
import type { VerdictInput } from '../../../core/run-in/to-show.ts'
import { shelfVerdict } from '../../../core/run-in/verdict.ts'

/** An 8-day mantel clock with a rack strike that sounds hours and half hours. */
export const mantel: ShelfClock = {
  durationDays: 8,
  sprung: true,
  isWound: true,
  strike: 'hours-half',
  countWheel: false,
  chime: false,
  chimeCorrects: false,
  setInBeat: true,
}

const startMs = Date.UTC(2027, 2, 1, 9)
/** The instant so many days after the start. */
export const at = (day: number): string => new Date(startMs + day * 86_400_000).toISOString()

/** One hour struck right a day, and two on the last days of a fortnight: all twelve are heard. */
const heard = (day: number) => ({ shown: (day % 12) + 1, counted: (day % 12) + 1 })

/** A fortnight read each day, 3 s a day fast, wound each week, cased on the seventh day; `more` changes single days, null leaves one out. */
export const fortnight = (
  more: Readonly<Record<number, Partial<ShelfReading> | null>> = {},
  days = 14,
): ShelfReading[] =>
  Array.from({ length: days + 1 }, (_, day) => day)
    .filter(day => more[day] !== null)
    .map(day => ({
      at: at(day),
      errorSeconds: 3 * day,
      hour: heard(day),
      ...(day % 7 === 0 ? { wound: true } : {}),
      ...(day === 7 ? { event: 'cased' as const, inBeat: true } : {}),
      ...more[day],
    }))

/** What a log says of the clock, judged as its last reading is made. */
export const judged = (readings: readonly ShelfReading[], more: Partial<VerdictInput> = {}) =>
  shelfVerdict({
    clock: mantel,
    policy: runInDefaults['8-day'].policy,
    limits: usualLimits['spring-recoil'] satisfies RateLimits,
    readings,
    now: readings.at(-1)?.at ?? at(0),
    ...more,
  })

/** The verdict and the codes of what is still to be shown. */
export const said = (readings: readonly ShelfReading[], more: Partial<VerdictInput> = {}): string[] => {
  const { verdict, toShow } = judged(readings, more)
  return [verdict, ...toShow.map(({ code }) => code)]
}
