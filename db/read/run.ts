import { asc, eq } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { standingEntries } from '../../core/run-in/log.ts'
import { stageNow } from '../../core/run-in/progress.ts'
import { among } from '../among.ts'
import type { Read } from '../ledger.ts'
import { assessmentOf, byRun, entriesOf, type RunRow } from '../run-log.ts'
import * as s from '../schema/index.ts'

type ClockRow = typeof s.clocks.$inferSelect

/** The stages of each of these runs as planned. */
export const stagesOf = (read: Read, runIds: readonly number[]) =>
  byRun(
    read
      .select()
      .from(s.runInStages)
      .where(among(s.runInStages.runId, runIds))
      .orderBy(asc(s.runInStages.position))
      .all(),
  )

/** What the plan of each of these runs asks for, in order of time. */
export const duesOf = (read: Read, runIds: readonly number[]) =>
  byRun(
    read
      .select()
      .from(s.runInDues)
      .where(among(s.runInDues.runId, runIds))
      .orderBy(asc(s.runInDues.dueAt), asc(s.runInDues.id))
      .all(),
  )

/** The log as written, each entry saying whether it still counts. */
function logOf(read: Read, runId: number) {
  const entries = entriesOf(read, runId)
  const standing = new Set(standingEntries(entries).map(entry => entry.id))
  return entries.map(entry => ({ ...entry, stands: standing.has(entry.id) }))
}

/** Everything about one run: place, stages, plan, log and figures; those of an ended run as they were frozen. */
export function runDetail(read: Read, run: RunRow, clock: ClockRow, at: string, timeZone: string) {
  const log = logOf(read, run.id)
  const stages = stagesOf(read, [run.id])(run.id)
  return {
    ...run,
    place: placeName(read, run.placeId),
    startedOn: civilDateOf(run.startedAt, timeZone),
    stages,
    ...stageNow(run.startedAt, stages, run.endedAt ?? at),
    dues: duesOf(read, [run.id])(run.id),
    log,
    figures: run.figures ?? assessmentOf(run, log, clock),
  }
}

const placeName = (read: Read, placeId: number | null): string | null =>
  placeId === null
    ? null
    : (read
        .select({ name: s.shelfPlaces.name })
        .from(s.shelfPlaces)
        .where(eq(s.shelfPlaces.id, placeId))
        .get()?.name ?? null)

/** Every run-in of a repair in order, the last one running or decided. */
export const runsOf = (read: Read, repairId: number, clock: ClockRow, at: string, timeZone: string) =>
  read
    .select()
    .from(s.runInRuns)
    .where(eq(s.runInRuns.repairId, repairId))
    .orderBy(asc(s.runInRuns.id))
    .all()
    .map(run => runDetail(read, run, clock, at, timeZone))
