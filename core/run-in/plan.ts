import { finalDay } from '../calendar/civil.ts'
import { dayOfMinute, type LocalMinute, type LocalTime, localMinute, localTime } from '../calendar/local.ts'
import { dayMinutes } from '../calendar/units.ts'
import {
  isOpenAt,
  lastOpenMinute,
  nextOpenMinute,
  type WorkCalendar,
  workCalendar,
} from '../calendar/work.ts'
import { gather, unless, whenGood } from '../checked.ts'
import { bad, type Checked, good, problem } from '../problems.ts'
import type { Duration } from '../vocabulary/clock.ts'
import type { RunInInput } from './input.ts'
import { movements, stageMinutes, stagesMinutes } from './movement.ts'
import { planProblems } from './plan-problems.ts'

/** A stage in local time; the next begins as it ends. */
export interface PlannedStage {
  readonly name: string
  readonly from: LocalTime
  readonly to: LocalTime
}

/** What is to be done until the clock may leave. */
export interface RunInPlan {
  readonly stages: readonly PlannedStage[]
  /** Every wind, the one at the start included. */
  readonly winds: readonly LocalTime[]
  /** When a reading is due, after the start. */
  readonly readings: readonly LocalTime[]
  /** The date of the first open minute at or after the end of the last stage. */
  readonly ready: string
}

/**
 * The plan: a wind falls due one interval after the last and is done within open hours; past its running time the
 * clock stands until it is wound, and standing does not count towards a stage. Problems: those of the calendar,
 * `runIn.duration`, `runIn.trains`, `runIn.noStage`, `runIn.windsOrDays`, `runIn.stageLength`,
 * `runIn.readingEveryDays`, `calendar.neverOpen`.
 */
export function runInPlan(input: RunInInput): Checked<RunInPlan> {
  const checked = gather({ calendar: workCalendar(input), input: unless(planProblems(input), () => input) })
  return whenGood(checked, ({ calendar }) => {
    const start = localMinute(input.start) ?? 0
    const run = runs(calendar, input, start)
    return run ? planned(calendar, input, run) : bad([problem('calendar.neverOpen', 'week')])
  })
}

/** One wind and the stretch it drives the clock, in local minutes. */
interface Run {
  readonly woundAt: LocalMinute
  readonly until: LocalMinute
}

/** Winds and running stretches until all stages are run, or undefined when the shop never opens again to wind. */
function runs(
  calendar: WorkCalendar,
  { duration, policy }: RunInInput,
  start: LocalMinute,
): Run[] | undefined {
  const { runningHours } = movements[duration]
  let left = stagesMinutes(policy.stages, duration)
  const all: Run[] = []
  let woundAt = start
  while (left > 0) {
    const next = nextWind(calendar, woundAt, duration)
    const stops = woundAt + runningHours * 60
    const until = Math.min(next ?? stops, stops, woundAt + left)
    left -= until - woundAt
    all.push({ woundAt, until })
    if (left > 0 && next === undefined) return undefined
    woundAt = next ?? woundAt
  }
  return all
}

/**
 * When the next wind is done: when due, else at the last open minute before, else at the next opening. Always after
 * the last wind.
 */
function nextWind(calendar: WorkCalendar, woundAt: LocalMinute, duration: Duration): LocalMinute | undefined {
  const due = woundAt + movements[duration].windEveryDays * dayMinutes
  if (isOpenAt(calendar, due)) return due
  return lastOpenMinute(calendar, due, woundAt) ?? nextOpenMinute(calendar, due)
}

function planned(calendar: WorkCalendar, input: RunInInput, run: readonly Run[]): Checked<RunInPlan> {
  const end = run.at(-1)?.until ?? 0
  const readings = readingsDue(calendar, run[0]?.woundAt ?? 0, end, input.policy.readingEveryDays)
  const ready = nextOpenMinute(calendar, end)
  if (ready === undefined || readings === undefined || dayOfMinute(end) > finalDay)
    return bad([problem('calendar.neverOpen', 'week')])
  return good({
    stages: stagesOf(input, run),
    winds: run.map(({ woundAt }) => localTime(woundAt)),
    readings: readings.map(localTime),
    ready: localTime(ready).slice(0, 10),
  })
}

function stagesOf({ policy, duration, start }: RunInInput, run: readonly Run[]): PlannedStage[] {
  let minutes = 0
  let from = start
  return policy.stages.map(stage => {
    minutes += stageMinutes(stage, duration)
    const to = localTime(minuteWhenRun(run, minutes))
    const planned = { name: stage.name, from, to }
    from = to
    return planned
  })
}

/** The local minute at which the clock has run so many minutes in all. */
function minuteWhenRun(run: readonly Run[], minutes: number): LocalMinute {
  let left = minutes
  for (const { woundAt, until } of run) {
    if (left <= until - woundAt) return woundAt + left
    left -= until - woundAt
  }
  throw new RangeError('the clock does not run so long')
}

/**
 * A reading each so many days after the start, up to the end; on a closed day at the next opening. Readings that
 * fall together are one.
 */
function readingsDue(
  calendar: WorkCalendar,
  start: LocalMinute,
  end: LocalMinute,
  everyDays: number,
): LocalMinute[] | undefined {
  const due = new Set<LocalMinute>()
  for (let at = start + everyDays * dayMinutes; at <= end; at += everyDays * dayMinutes) {
    const open = nextOpenMinute(calendar, at)
    if (open === undefined) return undefined
    due.add(open)
  }
  return [...due]
}
