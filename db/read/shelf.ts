import { and, asc, desc, eq, isNull, lt } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { cautionsFor } from '../../core/cautions/cautions.ts'
import { doneBy, standingEntries } from '../../core/run-in/log.ts'
import { windEveryDays } from '../../core/run-in/movement.ts'
import { stageNow } from '../../core/run-in/progress.ts'
import { shelfClock } from '../../core/run-in/shelf-clock.ts'
import { dueFromLog, dueToday, openDueDays } from '../../core/run-in/still-due.ts'
import type { Read } from '../file/ledger.ts'
import { latestClockCheck } from '../rows/clock-check.ts'
import { question } from '../rows/question.ts'
import { known } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { standingsOf } from '../rules/facts.ts'
import { inShop } from '../rules/in-shop.ts'
import { judge, logsOf, type RunRow, runRow, shopLimits } from '../rules/run-log.ts'
import * as s from '../schema/index.ts'
import { duesOf, runDetail, stagesOf } from './run.ts'

type LoggedEntry = ReturnType<ReturnType<typeof logsOf>>[number]

/** What a running clock asks for by the end of today: of its plan, and past it by its log, until something is decided. */
function dueOf(
  run: RunRow,
  clock: typeof s.clocks.$inferSelect,
  entries: readonly LoggedEntry[],
  dues: ReturnType<ReturnType<typeof duesOf>>,
  { today, timeZone }: { today: string; timeZone: string },
) {
  const done = standingEntries(entries).map(doneBy)
  const still = dueFromLog(
    {
      lastReadAt: done.findLast(one => one.read)?.at ?? run.startedAt,
      lastWoundAt: done.findLast(one => one.wound)?.at ?? run.startedAt,
      readingEveryDays: run.policy.readingEveryDays,
      windEveryDays: windEveryDays(shelfClock(clock).durationDays),
    },
    timeZone,
  )
  const open = dues.filter(due => due.doneAt === null)
  return dueToday(openDueDays(open, still, timeZone), today)
}

const ownerInShort = { id: s.owners.id, name: s.owners.name }

const runningNow = question(read =>
  read
    .select({
      run: s.runInRuns,
      repair: { id: s.repairs.id, number: s.repairs.number },
      clock: s.clocks,
      owner: ownerInShort,
      place: { id: s.shelfPlaces.id, name: s.shelfPlaces.name, kind: s.shelfPlaces.kind },
    })
    .from(s.runInRuns)
    .innerJoin(s.repairs, eq(s.repairs.id, s.runInRuns.repairId))
    .innerJoin(s.clocks, eq(s.clocks.id, s.repairs.clockId))
    .innerJoin(s.owners, eq(s.owners.id, s.repairs.ownerId))
    .leftJoin(s.shelfPlaces, eq(s.shelfPlaces.id, s.runInRuns.placeId))
    .where(isNull(s.runInRuns.endedAt))
    .orderBy(asc(s.shelfPlaces.walkOrder), asc(s.runInRuns.id)),
)

/** The line of one clock on the round: where it stands, what is due, its last readings, what its log says so far. */
function roundRows(read: Read, at: string, timeZone: string) {
  const today = civilDateOf(at, timeZone)
  const running = runningNow(read).all()
  const ids = running.map(({ run }) => run.id)
  const [logs, stages, dues] = [logsOf(read, ids), stagesOf(read, ids), duesOf(read, ids)]
  const judged = judge(read, at)
  return running.map(({ run, repair, clock, owner, place }) => {
    const entries = logs(run.id)
    const { verdict, toShow } = judged(run, entries, clock)
    return {
      runId: run.id,
      repairId: repair.id,
      number: repair.number,
      place,
      clock,
      owner,
      startedAt: run.startedAt,
      readyOn: run.readyOn,
      ...stageNow(run.startedAt, stages(run.id), at),
      due: dueOf(run, clock, entries, dues(run.id), { today, timeZone }),
      last: standingEntries(entries)
        .filter(entry => doneBy(entry).read)
        .slice(-3)
        .reverse()
        .map(entry => ({
          at: entry.at,
          errorMs: entry.leftMs ?? entry.errorMs,
          wound: entry.wound,
          stopped: entry.stopped,
        })),
      verdict,
      toShow: toShow.map(({ code }) => code),
    }
  })
}

const onTheBench = question(read =>
  read
    .select({
      repair: {
        id: s.repairs.id,
        number: s.repairs.number,
        covered: s.repairs.covered,
        estimateOnly: s.repairs.estimateOnly,
        readyAt: s.repairs.readyAt,
      },
      clock: s.clocks,
      owner: ownerInShort,
    })
    .from(s.repairs)
    .innerJoin(s.clocks, eq(s.clocks.id, s.repairs.clockId))
    .innerJoin(s.owners, eq(s.owners.id, s.repairs.ownerId))
    .where(and(inShop, eq(s.repairs.stage, 'on-the-bench')))
    .orderBy(asc(s.repairs.number)),
)

/** Repairs whose work is done and that may go on the shelf now, with the rate they would be held to. */
function toStart(read: Read) {
  const worked = onTheBench(read).all()
  const settings = readSettings(read)
  const standings = standingsOf(
    read,
    worked.map(({ repair }) => repair),
  )
  return worked
    .filter(({ repair }) => standings.get(repair.id)?.next.includes('start-run-in'))
    .map(({ repair, clock, owner }) => ({
      repairId: repair.id,
      number: repair.number,
      clock,
      owner,
      limits: shopLimits(clock, settings),
    }))
}

/** Every place in walking order with the clock that stands there. */
function placesOf(read: Read, rows: ReturnType<typeof roundRows>) {
  return read
    .select()
    .from(s.shelfPlaces)
    .where(eq(s.shelfPlaces.active, true))
    .orderBy(asc(s.shelfPlaces.walkOrder))
    .all()
    .map(place => ({ ...place, number: rows.find(row => row.place?.id === place.id)?.number ?? null }))
}

/** The shelf: what runs in and where it stands, what the round of today asks for, and what may go up next. */
export function shelfView(read: Read, at: string) {
  const { timeZone } = readSettings(read).place
  const rows = roundRows(read, at, timeZone)
  return {
    today: civilDateOf(at, timeZone),
    at,
    rows,
    places: placesOf(read, rows),
    toStart: toStart(read),
    clockCheck: latestClockCheck(read) ?? null,
    counts: {
      running: rows.length,
      due: rows.filter(row => row.due.reading || row.due.wind).length,
      toWind: rows.filter(row => row.due.wind).length,
      mayPass: rows.filter(row => row.verdict === 'may-pass').length,
    },
  }
}

/** The runs of the same repair that ended before this one, the last first. */
const runsBefore = (read: Read, run: typeof s.runInRuns.$inferSelect, timeZone: string) =>
  read
    .select({
      id: s.runInRuns.id,
      startedAt: s.runInRuns.startedAt,
      endedAt: s.runInRuns.endedAt,
      outcome: s.runInRuns.outcome,
      reason: s.runInRuns.reason,
    })
    .from(s.runInRuns)
    .where(and(eq(s.runInRuns.repairId, run.repairId), lt(s.runInRuns.id, run.id)))
    .orderBy(desc(s.runInRuns.id))
    .all()
    .map(({ startedAt, endedAt, ...before }) => ({
      ...before,
      startedOn: civilDateOf(startedAt, timeZone),
      endedOn: endedAt && civilDateOf(endedAt, timeZone),
    }))

/** One run with its log, plan and figures, the clock and repair it is of, and the runs before it. */
export function runView(read: Read, runId: number, at: string) {
  const { timeZone } = readSettings(read).place
  const run = runRow(read, runId)
  const about = read
    .select({ repair: s.repairs, clock: s.clocks, owner: ownerInShort })
    .from(s.repairs)
    .innerJoin(s.clocks, eq(s.clocks.id, s.repairs.clockId))
    .innerJoin(s.owners, eq(s.owners.id, s.repairs.ownerId))
    .where(eq(s.repairs.id, run.repairId))
    .get()
  const { repair, clock, owner } = known(about, 'repair.unknown', 'repairId')
  return {
    repair: { id: repair.id, number: repair.number, stage: repair.stage },
    owner,
    clock,
    cautions: cautionsFor(clock),
    run: runDetail(read, run, clock, at, timeZone),
    before: runsBefore(read, run, timeZone),
  }
}
