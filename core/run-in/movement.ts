import { dayMinutes } from '../calendar/units.ts'
import type { Duration } from '../vocabulary/clock.ts'
import type { Stage } from './policy.ts'

/** How long a movement of each duration runs on a full wind, in hours, and how often it is wound, in days. */
export const movements = {
  '30-hour': { runningHours: 30, windEveryDays: 1 },
  '8-day': { runningHours: 192, windEveryDays: 7 },
  '14-day': { runningHours: 336, windEveryDays: 13 },
  '31-day': { runningHours: 744, windEveryDays: 30 },
  year: { runningHours: 8784, windEveryDays: 360 },
  '400-day': { runningHours: 9600, windEveryDays: 365 },
} as const satisfies Record<Duration, { runningHours: number; windEveryDays: number }>

/** How many days a movement of each duration runs on a full wind. */
export const durationDays: Readonly<Record<Duration, number>> = {
  '30-hour': 1.25,
  '8-day': 8,
  '14-day': 14,
  '31-day': 31,
  year: 366,
  '400-day': 400,
}

const usualIntervals: readonly (readonly [durationDays: number, windEveryDays: number])[] = [
  [1.25, 1],
  [8, 7],
  [14, 13],
  [15, 14],
  [31, 30],
  [366, 360],
  [400, 365],
]

/**
 * How often a movement that runs so many days is wound: the usual intervals (common practice), for others whole days up to seven eighths of its run, at
 * least one.
 */
export const windEveryDays = (days: number): number =>
  usualIntervals.find(([usual]) => usual === days)?.[1] ?? Math.max(1, Math.floor((days * 7) / 8))

/** The days a stage asks of a movement: its winds at the winding interval, or its days. */
export const stageDays = ({ winds, days }: Pick<Stage, 'winds' | 'days'>, everyDays: number): number =>
  winds === undefined ? (days ?? 0) : winds * everyDays

/** The running minutes a stage asks of a movement. */
export const stageMinutes = (stage: Pick<Stage, 'winds' | 'days'>, duration: Duration): number =>
  stageDays(stage, movements[duration].windEveryDays) * dayMinutes

/** How long all stages together are, in minutes of running. */
export const stagesMinutes = (stages: readonly Stage[], duration: Duration): number =>
  stages.reduce((sum, stage) => sum + stageMinutes(stage, duration), 0)
