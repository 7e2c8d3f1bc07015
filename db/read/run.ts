import { asc, eq } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { verdictAsKept } from '../../core/run-in/former.ts'
import { standingEntries } from '../../core/run-in/log.ts'
import { stageNow } from '../../core/run-in/progress.ts'
import type { Read } from '../file/ledger.ts'
import { amongAsked, askedId, question, these } from '../rows/question.ts'
import { readSettings } from '../rows/settings.ts'
import { byRun, entriesOf, judge, limitsOf, type RunRow } from '../rules/run-log.ts'
import * as s from '../schema/index.ts'

type ClockRow = typeof s.clocks.$inferSelect

const stages = question(read =>
  read
    .select()
    .from(s.runInStages)
    .where(amongAsked(s.runInStages.runId))
    .orderBy(asc(s.runInStages.position)),
)

/** The stages of each of these runs as planned. */
export const stagesOf = (read: Read, runIds: readonly number[]) => byRun(stages(read).all(these(runIds)))

const dues = question(read =>
  read
    .select()
    .from(s.runInDues)
    .where(amongAsked(s.runInDues.runId))
    .orderBy(asc(s.runInDues.dueAt), asc(s.runInDues.id)),
)

/** What the plan of each of these runs asks for, in order of time. */
export const duesOf = (read: Read, runIds: readonly number[]) => byRun(dues(read).all(these(runIds)))

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
    endedOn: run.endedAt && civilDateOf(run.endedAt, timeZone),
    stages,
    ...stageNow(run.startedAt, stages, run.endedAt ?? at),
    dues: duesOf(read, [run.id])(run.id),
    log,
    limits: limitsOf(run, clock, readSettings(read)),
    figures: run.figures ? verdictAsKept(run.figures) : judge(read, at)(run, log, clock),
  }
}

const placeName = (read: Read, placeId: number | null): string | null =>
  placeId === null ? null : (place(read).get({ id: placeId })?.name ?? null)

const place = question(read =>
  read.select({ name: s.shelfPlaces.name }).from(s.shelfPlaces).where(eq(s.shelfPlaces.id, askedId)),
)

const runs = question(read =>
  read.select().from(s.runInRuns).where(eq(s.runInRuns.repairId, askedId)).orderBy(asc(s.runInRuns.id)),
)

/** Every run-in of a repair in order, the last one running or decided. */
export const runsOf = (read: Read, repairId: number, clock: ClockRow, at: string, timeZone: string) =>
  runs(read)
    .all({ id: repairId })
    .map(run => runDetail(read, run, clock, at, timeZone))
