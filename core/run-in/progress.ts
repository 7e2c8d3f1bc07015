import { dayMs } from '../calendar/units.ts'
import type { Instant } from '../calendar/zone.ts'

/** A stage with its planned times. */
export interface TimedStage {
  readonly name: string
  readonly fromAt: Instant
  readonly toAt: Instant
}

/** The stage a run is in at `now` (the last one once the plan is over), the day of the run, 1 on its first, and of how many. */
export function stageNow(startedAt: Instant, stages: readonly TimedStage[], now: Instant) {
  const stage = stages.find(({ toAt }) => now < toAt) ?? stages.at(-1)
  const end = stages.at(-1)?.toAt ?? startedAt
  const days = (from: Instant, to: Instant) => Math.max(0, Date.parse(to) - Date.parse(from)) / dayMs
  return {
    stageName: stage?.name ?? '',
    day: Math.floor(days(startedAt, now)) + 1,
    ofDays: Math.max(1, Math.ceil(days(startedAt, end))),
  }
}
