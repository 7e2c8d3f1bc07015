import { addDays } from '../calendar/civil.ts'
import { civilDateOf, type Instant } from '../calendar/zone.ts'
import type { Due } from './dues.ts'

/** What is still to be done for a clock, each on its day; null where the movement runs longer than anybody waits. */
export interface StillDue {
  readonly readingOn: string
  readonly windOn: string
}

interface Since {
  readonly lastReadAt: Instant
  readonly lastWoundAt: Instant
  readonly readingEveryDays: number
  readonly windEveryDays: number
}

/** When a clock has to be read and wound next, counted from the last time it was: as long as nothing is decided, also past the end of its plan. */
export const dueFromLog = (since: Since, timeZone: string): StillDue => ({
  readingOn: addDays(civilDateOf(since.lastReadAt, timeZone), since.readingEveryDays),
  windOn: addDays(civilDateOf(since.lastWoundAt, timeZone), since.windEveryDays),
})

/** What is due by the end of a day, whether some of it is left from an earlier day, and when something is due next. */
export interface DueToday {
  readonly wind: boolean
  readonly reading: boolean
  readonly overdue: boolean
  readonly nextOn: string | null
}

/** The open dues of a plan on their days; past the plan's end those that follow from the log. */
export function openDueDays(
  open: readonly Pick<Due, 'kind' | 'dueAt'>[],
  still: StillDue,
  timeZone: string,
): { readonly kind: Due['kind']; readonly on: string }[] {
  const planned = open.map(({ kind, dueAt }) => ({ kind, on: civilDateOf(dueAt, timeZone) }))
  const has = (kind: Due['kind']) => planned.some(due => due.kind === kind)
  return [
    ...planned,
    ...(has('reading') ? [] : [{ kind: 'reading' as const, on: still.readingOn }]),
    ...(has('wind') ? [] : [{ kind: 'wind' as const, on: still.windOn }]),
  ]
}

/** What of these is due by the end of `today`. */
export function dueToday(
  dues: readonly { readonly kind: Due['kind']; readonly on: string }[],
  today: string,
): DueToday {
  const now = dues.filter(due => due.on <= today)
  const later = dues.filter(due => due.on > today).map(due => due.on)
  return {
    wind: now.some(due => due.kind === 'wind'),
    reading: now.some(due => due.kind === 'reading'),
    overdue: now.some(due => due.on < today),
    nextOn: later.sort()[0] ?? null,
  }
}
