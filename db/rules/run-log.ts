import { and, asc, eq, isNull, sql } from 'drizzle-orm'
import { closedDaysBetween } from '../../core/calendar/closed-days.ts'
import { type Done, duesDone } from '../../core/run-in/dues.ts'
import { goingOf, type LimitsSetting, type RateLimits } from '../../core/run-in/limits.ts'
import { type Correctable, doneBy, type LogEntry, shelfLog, standingEntries } from '../../core/run-in/log.ts'
import { shelfClock } from '../../core/run-in/shelf-clock.ts'
import { shelfVerdict, type Verdict } from '../../core/run-in/verdict.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Read, Write } from '../file/ledger.ts'
import { amongAsked, question, these } from '../rows/question.ts'
import { known } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { type clocks, readings, runInDues, runInRuns } from '../schema/index.ts'
import { shopCalendar } from './shop-calendar.ts'

export type RunRow = typeof runInRuns.$inferSelect
export type ReadingRow = typeof readings.$inferSelect
type ClockRow = typeof clocks.$inferSelect

/** The rows of each run, none for a run that has none. */
export type ByRun<Row> = (runId: number) => readonly Row[]

/** Rows told apart by their run. */
export function byRun<Row extends { readonly runId: number }>(rows: readonly Row[]): ByRun<Row> {
  const groups = Map.groupBy(rows, row => row.runId)
  return runId => groups.get(runId) ?? []
}

/** The run-in, or a refusal. */
export const runRow = (read: Read, id: number): RunRow =>
  known(read.select().from(runInRuns).where(eq(runInRuns.id, id)).get(), 'runIn.unknown', 'runId')

const entries = question(read =>
  read.select().from(readings).where(amongAsked(readings.runId)).orderBy(asc(readings.id)),
)

/** Every entry of a run's log as written, corrected ones too, in order of entry. */
export const entriesOf = (read: Read, runId: number): readonly ReadingRow[] =>
  entries(read).all(these([runId]))

/** An entry as SQLite tells it: yes is 1, no is 0. */
type Told<Entry> = {
  [Name in keyof Entry]: Entry[Name] extends boolean
    ? 0 | 1
    : Entry[Name] extends boolean | null
      ? 0 | 1 | null
      : Entry[Name]
}

/** What of an entry the sums take, and whether it counts: not who read it, nor when it was written down. */
type Summed = LogEntry & Correctable & { readonly runId: number }

const isSo = <None extends null>(told: 0 | 1 | None): boolean | None => (told === null ? told : told === 1)

const summed = (told: Told<Summed>): Summed => ({
  ...told,
  wound: told.wound === 1,
  strikeRight: isSo(told.strikeRight),
  chimeRight: isSo(told.chimeRight),
  inBeat: isSo(told.inBeat),
  quarterRight: isSo(told.quarterRight),
  selfCorrected: isSo(told.selfCorrected),
  silent: isSo(told.silent),
  repeats: isSo(told.repeats),
  stopped: told.stopped === 1,
  twelveRight: told.twelveRight === 1,
  fourRight: told.fourRight === 1,
  withdrawn: told.withdrawn === 1,
})

/**
 * The logs of these runs as the sums take them, corrected entries too, each in order of entry. In plain SQL, for the round reads a
 * thousand entries at once.
 */
export const logsOf = (read: Read, runIds: readonly number[]): ByRun<Summed> =>
  byRun(
    read
      .all<Told<Summed>>(sql`
        SELECT id, run_id AS runId, at, error_ms AS errorMs, left_ms AS leftMs, wound, stopped, nut_turns AS nutTurns, event,
          hour_shown AS hourShown, hour_counted AS hourCounted, half_counted AS halfCounted, quarter, quarter_right AS quarterRight,
          twelve_right AS twelveRight, four_right AS fourRight, self_corrected AS selfCorrected, silent, repeats, in_beat AS inBeat, strike_right AS strikeRight, chime_right AS chimeRight,
          corrects_id AS correctsId, withdrawn
        FROM readings WHERE run_id IN (SELECT value FROM json_each(${JSON.stringify(runIds)})) ORDER BY id`)
      .map(summed),
  )

/** How near and how steady a clock has to go in this run: as said at its beginning, else what is usual for its kind. */
export const limitsOf = (run: RunRow, clock: ClockRow, settings: Settings): RateLimits => ({
  perDay: Number(run.limitPerDay),
  steady: Number(run.steadyWithin ?? shopLimits(clock, settings).steady),
})

/** What the shop asks of clocks of this kind. */
export const shopLimits = ({ form, power, escapement }: ClockRow, { limits }: Settings): LimitsSetting =>
  limits[goingOf({ kind: form, power, escapement })]

/** Judges runs at an instant: days on which the shop was closed count as watched. */
export function judge(read: Read, now: string) {
  const settings = readSettings(read)
  const closedDays = closedDaysBetween(shopCalendar(read), settings.place.timeZone)
  return (run: RunRow, entries: readonly (LogEntry & Correctable)[], clock: ClockRow): Verdict =>
    shelfVerdict({
      clock: shelfClock(clock),
      policy: run.policy,
      limits: limitsOf(run, clock, settings),
      readings: shelfLog(entries),
      now,
      closedDays,
    })
}

/** Ticks off what `log` fulfils of the dues, and opens again what it does not. */
function tickOff(
  tx: Write,
  dues: readonly (typeof runInDues.$inferSelect)[],
  log: readonly Done[],
  settings: Settings,
): void {
  const done = duesDone(dues, log, settings.place.timeZone)
  for (const due of dues) {
    const doneAt = done.get(due.id) ?? null
    if (doneAt !== due.doneAt) tx.update(runInDues).set({ doneAt }).where(eq(runInDues.id, due.id)).run()
  }
}

/** Ticks off what the newest reading of a run fulfils of its plan. */
export function settleOpenDues(tx: Write, reading: ReadingRow, settings: Settings): void {
  const open = tx
    .select()
    .from(runInDues)
    .where(and(eq(runInDues.runId, reading.runId), isNull(runInDues.doneAt)))
    .all()
  tickOff(tx, open, [doneBy(reading)], settings)
}

/** Ticks off the whole plan anew by the log as it stands, after something in it was corrected. */
export function settleAllDues(tx: Write, runId: number, settings: Settings): void {
  const all = tx.select().from(runInDues).where(eq(runInDues.runId, runId)).all()
  tickOff(tx, all, standingEntries(entriesOf(tx, runId)).map(doneBy), settings)
}

/** True when an entry that counts stands at or after `at` in the log. */
export const isReadAfter = (read: Read, runId: number, at: string): boolean =>
  read.get(sql`
    SELECT 1 FROM readings r
    WHERE r.run_id = ${runId} AND r.at >= ${at} AND r.withdrawn = 0
      AND NOT EXISTS (SELECT 1 FROM readings c WHERE c.corrects_id = r.id)
    LIMIT 1`) !== undefined
