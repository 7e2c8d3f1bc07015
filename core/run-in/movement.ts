import { dayMinutes } from '../calendar/units.ts'
import type { Duration } from '../vocabulary/clock.ts'
import type { Stage } from './policy.ts'

/** How long a movement of each duration runs on a full wind, in hours, and how often it is wound, in days. */
export const movements = {
  '30-hour': { runningHours: 30, windEveryDays: 1 },
  '8-day': { runningHours: 192, windEveryDays: 7 },
  '31-day': { runningHours: 744, windEveryDays: 30 },
  '400-day': { runningHours: 9600, windEveryDays: 365 },
} as const satisfies Record<Duration, { runningHours: number; windEveryDays: number }>

/** The running minutes a stage asks of a movement: its winds at the winding interval, or its days. */
export const stageMinutes = ({ winds, days }: Pick<Stage, 'winds' | 'days'>, duration: Duration): number =>
  (winds === undefined ? (days ?? 0) : winds * movements[duration].windEveryDays) * dayMinutes

/** How long all stages together are, in minutes of running. */
export const stagesMinutes = (stages: readonly Stage[], duration: Duration): number =>
  stages.reduce((sum, stage) => sum + stageMinutes(stage, duration), 0)
