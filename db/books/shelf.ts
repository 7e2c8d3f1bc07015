import { and, eq, isNull, max } from 'drizzle-orm'
import { instantOf, localOf } from '../../core/calendar/zone.ts'
import type { PlaceRoom } from '../../core/run-in/place-fit.ts'
import { type RunInPlan, runInPlan } from '../../core/run-in/plan.ts'
import type { Verdict, VerdictCode } from '../../core/run-in/verdict.ts'
import type { Settings } from '../../core/shop/settings.ts'
import { supposedMovement } from '../../core/vocabulary/clock.ts'
import type { Read, Write } from '../file/ledger.ts'
import { known, refuse } from '../rows/refusal.ts'
import { clockRow } from '../rows/register-rows.ts'
import { refuseUnseen } from '../rows/seen.ts'
import { readSettings } from '../rows/settings.ts'
import { type Doing, verb } from '../rows/verb.ts'
import { accepted } from '../rules/checked-in.ts'
import { type RepairRow, repairOpenTo, repairRow, settle } from '../rules/facts.ts'
import { pastMoment, refuseBackwards } from '../rules/moments.ts'
import { entriesOf, judge, type RunRow, runRow, settleAllDues, shopLimits } from '../rules/run-log.ts'
import { holidayDates } from '../rules/shop-calendar.ts'
import { repairs, runInDues, runInRuns, runInStages, shelfPlaces } from '../schema/index.ts'
import { noteMove, startReading } from './readings.ts'

/** A place that is free and in use; refuses one where another clock stands. */
function freePlace(tx: Read, placeId: number, field = 'placeId') {
  const place = known(
    tx
      .select()
      .from(shelfPlaces)
      .where(and(eq(shelfPlaces.id, placeId), eq(shelfPlaces.active, true)))
      .get(),
    'place.unknown',
    field,
  )
  const there = tx
    .select({ number: repairs.number })
    .from(runInRuns)
    .innerJoin(repairs, eq(repairs.id, runInRuns.repairId))
    .where(and(eq(runInRuns.placeId, placeId), isNull(runInRuns.endedAt)))
    .get()
  if (there) refuse('place.taken', field, { number: there.number, place: place.name })
  return place
}

/** Where, from when, how closely and how wrong a clock begins its run-in. */
export interface Beginning {
  /** Local time; null for now. */
  readonly start: string | null
  /** Seconds a day as decimal text; null for what is usual for this kind of clock. */
  readonly limitPerDay: string | null
  /** Seconds of scatter as decimal text; null for what is usual. */
  readonly steadyWithin: string | null
  /** How far off its hands were left at the start, as typed; null where it was not set. */
  readonly error: string | null
}

function writePlan(tx: Write, runId: number, plan: RunInPlan, zone: string): void {
  for (const [position, { name, from, to }] of plan.stages.entries())
    tx.insert(runInStages)
      .values({ runId, position, name, fromAt: instantOf(from, zone), toAt: instantOf(to, zone) })
      .run()
  const dues = [
    ...plan.winds.map(at => ({ kind: 'wind' as const, at })),
    ...plan.readings.map(at => ({ kind: 'reading' as const, at })),
  ]
  for (const { kind, at } of dues)
    tx.insert(runInDues)
      .values({ runId, kind, dueAt: instantOf(at, zone) })
      .run()
}

const minuteBegun = (at: string): string => `${at.slice(0, 16)}:00.000Z`

function startedAtOf(
  tx: Read,
  input: Beginning,
  repair: RepairRow,
  settings: Settings,
  doing: Doing,
): string {
  if (input.start === null) return minuteBegun(doing.at)
  const at = pastMoment(input.start, settings, doing.at, 'start', 'runIn.inFuture')
  if (at < minuteBegun(repair.takenInAt)) refuse('runIn.beforeTakenIn', 'start')
  const last = tx
    .select({ endedAt: max(runInRuns.endedAt) })
    .from(runInRuns)
    .where(eq(runInRuns.repairId, repair.id))
    .get()
  if (last?.endedAt && at < minuteBegun(last.endedAt)) refuse('runIn.beforeLastEnded', 'start')
  return at
}

/** Begins a run: the plan by the shop's policy for the movement, its stages and what falls due, the first entry of its log. */
function begin(tx: Write, repair: RepairRow, placeId: number | null, input: Beginning, doing: Doing) {
  const settings = readSettings(tx)
  const clock = clockRow(tx, repair.clockId)
  const { duration, trains } = supposedMovement(clock)
  const policy = settings.runIn[duration]
  const startedAt = startedAtOf(tx, input, repair, settings, doing)
  const plan = accepted(
    runInPlan({
      week: settings.hours.week,
      holidays: holidayDates(tx),
      duration,
      trains,
      start: localOf(startedAt, settings.place.timeZone),
      policy,
    }),
  )
  const { steadyWithin } = input
  const limitPerDay = input.limitPerDay ?? shopLimits(clock, settings).perDay
  const run = tx
    .insert(runInRuns)
    .values({
      repairId: repair.id,
      placeId,
      startedAt,
      policy,
      limitPerDay,
      steadyWithin,
      readyOn: plan.ready,
    })
    .returning()
    .get()
  writePlan(tx, run.id, plan, settings.place.timeZone)
  startReading(tx, run, input.error, settings, doing)
  settleAllDues(tx, run.id, settings)
  settle(tx, repair.id, doing.at)
  return { id: run.id, readyOn: plan.ready, winds: plan.winds.length, readings: plan.readings.length }
}

/** Puts a clock on the run-in shelf, wound and, unless told otherwise, set right. */
export const startRunIn = verb(
  'shelf.startRunIn',
  (tx, input: Beginning & { repairId: number; placeId: number }, doing) => {
    const repair = repairOpenTo(tx, input.repairId, 'start-run-in')
    const place = freePlace(tx, input.placeId)
    return {
      subject: { kind: 'repair', id: repair.id },
      result: begin(tx, repair, place.id, input, doing),
    }
  },
)

/** The run while it goes on; refuses one that has ended, or a computer clock that stands before its beginning. */
function openRun(tx: Read, runId: number, doing: Doing): RunRow {
  const run = runRow(tx, runId)
  if (run.endedAt) refuse('runIn.ended', 'runId')
  refuseBackwards(run.startedAt, doing.at)
  return run
}

type Outcome = NonNullable<RunRow['outcome']>

/** Ends a run with the figures of its log, frozen. */
function end(tx: Write, run: RunRow, outcome: Outcome, reason: string, doing: Doing): Verdict {
  const clock = clockRow(tx, repairRow(tx, run.repairId).clockId)
  const figures = judge(tx, doing.at)(run, entriesOf(tx, run.id), clock)
  tx.update(runInRuns)
    .set({ endedAt: doing.at, outcome, reason, decidedBy: doing.personId, figures })
    .where(eq(runInRuns.id, run.id))
    .run()
  return figures
}

export interface Passing {
  readonly runId: number
  readonly reason: string
  /** What the log said as the decision was made; null in older day books, which were judged otherwise: nothing is compared then. */
  readonly seen: { readonly verdict: VerdictCode } | null
}

/** Passes a run-in: a recorded decision with its figures; against the verdict only with a reason. The clock is ready. */
export const pass = verb('shelf.pass', (tx, { runId, reason, seen }: Passing, doing) => {
  const run = openRun(tx, runId, doing)
  repairOpenTo(tx, run.repairId, 'decide-run-in')
  const figures = end(tx, run, 'passed', reason, doing)
  refuseUnseen(seen, { verdict: figures.verdict })
  if (seen && figures.verdict !== 'may-pass' && reason === '') refuse('runIn.reasonNeeded', 'reason')
  tx.update(repairs).set({ readyAt: doing.at, readyReason: reason }).where(eq(repairs.id, run.repairId)).run()
  settle(tx, run.repairId, doing.at)
  return {
    subject: { kind: 'run-in', id: run.id },
    result: { id: run.id, repairId: run.repairId, verdict: figures.verdict },
  }
})

/** Begins the test again in the same place after a fault; the old run stays with its log and its figures. */
export const restart = verb(
  'shelf.restart',
  (tx, input: { runId: number; reason: string; error: string | null }, doing) => {
    const run = openRun(tx, input.runId, doing)
    const repair = repairOpenTo(tx, run.repairId, 'decide-run-in')
    end(tx, run, 'restarted', input.reason, doing)
    const { limitPerDay, steadyWithin } = run
    const beginning = { start: null, limitPerDay, steadyWithin, error: input.error }
    return {
      subject: { kind: 'run-in', id: run.id },
      result: { endedId: run.id, ...begin(tx, repair, run.placeId, beginning, doing) },
    }
  },
)

/** Takes a clock from the shelf back to the bench. */
export const toBench = verb('shelf.toBench', (tx, input: { runId: number; reason: string }, doing) => {
  const run = openRun(tx, input.runId, doing)
  repairOpenTo(tx, run.repairId, 'decide-run-in')
  end(tx, run, 'to-bench', input.reason, doing)
  settle(tx, run.repairId, doing.at)
  return { subject: { kind: 'run-in', id: run.id }, result: { id: run.id, repairId: run.repairId } }
})

/** The room at a place, what it bears, and whether weights can hang there; null where it is not said. */
type Room = Omit<PlaceRoom, 'kind'>

export interface PlaceDescribed extends Room {
  readonly placeId: number
  /** The place as the writer has seen it. */
  readonly seen: Room | null
}

/** Says what fits at a place: advice to whoever puts a clock there, never a refusal. */
export const describePlace = verb('shelf.describePlace', (tx, { placeId, seen, ...room }: PlaceDescribed) => {
  const place = known(
    tx.select().from(shelfPlaces).where(eq(shelfPlaces.id, placeId)).get(),
    'place.unknown',
    'placeId',
  )
  refuseUnseen(seen, place)
  tx.update(shelfPlaces).set(room).where(eq(shelfPlaces.id, place.id)).run()
  return { subject: { kind: 'shop', id: 1 }, result: { id: place.id, name: place.name } }
})

export interface Moving {
  readonly runId: number
  readonly placeId: number
  /** Whether the log says so: elsewhere a clock may go otherwise. Older day books did not. */
  readonly noted: boolean
}

/** Moves a clock to another place on the shelf. */
export const move = verb('shelf.move', (tx, input: Moving, doing) => {
  const run = openRun(tx, input.runId, doing)
  const place = freePlace(tx, input.placeId)
  tx.update(runInRuns).set({ placeId: place.id }).where(eq(runInRuns.id, run.id)).run()
  if (input.noted) noteMove(tx, run, doing)
  return { subject: { kind: 'run-in', id: run.id }, result: { id: run.id } }
})
