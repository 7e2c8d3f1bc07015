import type { Instant } from '../calendar/zone.ts'
import { type LineWork, type Task, tasks } from '../vocabulary/work.ts'
import { minutesOfHours } from './hours.ts'
import { entryMinutes, type LabourSpan } from './minutes.ts'

/** The kinds of work in which estimated hours and worked hours can be told against each other. */
export const worksTold = ['movement', 'case', 'dial', 'set-up'] as const
export type WorkTold = (typeof worksTold)[number]

/** Where the hours of a line of an estimate belong; a line that was not told to be anything is work on the movement. */
const ofLine: Readonly<Partial<Record<LineWork, WorkTold>>> = {
  'case-repair': 'case',
  'dial-repair': 'dial',
  'dial-cleaning': 'dial',
  're-silvering': 'dial',
  'set-up': 'set-up',
}

/** Where the time of a task belongs. */
const ofTask: Readonly<Partial<Record<Task, WorkTold>>> = { case: 'case', dial: 'dial', 'set-up': 'set-up' }

/** A labour line that was agreed to; hours as decimal text. */
export interface AgreedLine {
  readonly quantity: string
  readonly work: LineWork | null
}

/** Estimated and worked minutes of one kind of work, and its tasks in the order of a service. */
export interface WorkHours {
  readonly work: WorkTold
  /** Null where nothing was estimated for it. */
  readonly estimatedMinutes: number | null
  readonly workedMinutes: number
  readonly tasks: readonly { readonly task: Task; readonly minutes: number }[]
}

type Entry = LabourSpan & { readonly task: Task }

function hoursOf(
  work: WorkTold,
  lines: readonly AgreedLine[],
  entries: readonly Entry[],
  now: Instant,
): WorkHours {
  const minutesOf = (task: Task) =>
    entries.filter(entry => entry.task === task).reduce((sum, entry) => sum + entryMinutes(entry, now), 0)
  const worked = tasks
    .filter(task => (ofTask[task] ?? 'movement') === work)
    .map(task => ({ task, minutes: minutesOf(task) }))
    .filter(({ minutes }) => minutes > 0)
  const estimated = lines.filter(line => (ofLine[line.work ?? 'overhaul'] ?? 'movement') === work)
  return {
    work,
    estimatedMinutes: estimated.length > 0 ? minutesOfHours(estimated.map(line => line.quantity)) : null,
    workedMinutes: worked.reduce((sum, { minutes }) => sum + minutes, 0),
    tasks: worked,
  }
}

/** Estimated against worked minutes by kind of work, with the tasks of each; kinds with neither are left out. Every minute that stands is counted once. */
export const hoursByWork = (
  lines: readonly AgreedLine[],
  entries: readonly Entry[],
  now: Instant,
): WorkHours[] =>
  worksTold
    .map(work => hoursOf(work, lines, entries, now))
    .filter(({ estimatedMinutes, workedMinutes }) => estimatedMinutes !== null || workedMinutes > 0)
