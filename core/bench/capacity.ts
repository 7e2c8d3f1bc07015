import { minuteOf } from '../calendar/local.ts'
import type { WorkWeek } from '../calendar/opening.ts'
import { dayMinutes } from '../calendar/units.ts'

/** How much work lies ahead of the benches, and how long it will take them. */
export interface BenchCapacity {
  readonly aheadMinutes: number
  /** How many work at a bench. */
  readonly benches: number
  readonly minutesPerWeek: number
  /** Weeks of open hours the work ahead fills, to a tenth; null where nobody works or the shop is never open. */
  readonly weeks: number | null
}

const openMinutes = (week: WorkWeek): number =>
  week.reduce((sum, { from, to }) => sum + (minuteOf(to) ?? dayMinutes) - (minuteOf(from) ?? 0), 0)

/** The hours agreed and not yet worked against the open hours of everyone at a bench. */
export function benchCapacity(ahead: readonly number[], week: WorkWeek, benches: number): BenchCapacity {
  const aheadMinutes = ahead.reduce((sum, minutes) => sum + minutes, 0)
  const minutesPerWeek = openMinutes(week) * benches
  const weeks = minutesPerWeek > 0 ? Math.round((aheadMinutes / minutesPerWeek) * 10) / 10 : null
  return { aheadMinutes, benches, minutesPerWeek, weeks }
}
