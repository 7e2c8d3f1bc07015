import type { RunInInput } from '../../../core/run-in/input.ts'
import { runInPlan } from '../../../core/run-in/plan.ts'
import type { RunInPolicy, Stage } from '../../../core/run-in/policy.ts'
import { calculation } from './calculation.ts'
import { choice, list, number, optional, record, text } from './shape.ts'
import { holidays, localTime, week } from './shapes.ts'

/** A stage of a policy. */
export const stage = record<Stage>({ name: text('stage'), winds: optional(number), days: optional(number) })

const start = record<Omit<RunInInput, 'closures'>>({
  duration: choice('30-hour', '8-day', '31-day', '400-day'),
  trains: number,
  start: localTime,
  week,
  holidays,
  policy: record<RunInPolicy>({ stages: list(stage), readingEveryDays: number }),
})

export default calculation(start, runInPlan)
