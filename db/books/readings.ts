import { eq } from 'drizzle-orm'
import { minuteOf } from '../../core/calendar/local.ts'
import { minuteMs } from '../../core/calendar/units.ts'
import { localOf } from '../../core/calendar/zone.ts'
import { typedError } from '../../core/rate/typed-error.ts'
import { standingEntries } from '../../core/run-in/log.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Read, Write } from '../file/ledger.ts'
import { latestClockCheck } from '../rows/clock-check.ts'
import { known, refuse } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { type Doing, verb } from '../rows/verb.ts'
import { accepted } from '../rules/checked-in.ts'
import { pastMoment, refuseBackwards } from '../rules/moments.ts'
import {
  entriesOf,
  isReadAfter,
  type ReadingRow,
  type RunRow,
  runRow,
  settleAllDues,
  settleOpenDues,
} from '../rules/run-log.ts'
import { clockChecks, readings } from '../schema/index.ts'

/** What is seen, heard and done at a clock on the round. */
export interface ReadingEntry {
  /** Local time, with seconds where they matter, or an instant; null for now (a correction: the time it corrects). */
  readonly at: string | null
  /** Seconds fast or slow as typed, such as `+0:02`; null only where the clock was found stopped. */
  readonly error: string | null
  readonly wound: boolean
  readonly strikeRight: boolean | null
  readonly chimeRight: boolean | null
  /** The time on its own dial, `HH:MM`, at which so many blows were heard. */
  readonly heardAt: string
  readonly blows: number | null
  readonly inBeat: boolean | null
  readonly stopped: boolean
  readonly handsSet: boolean
  /** Decimal text, '' for none. */
  readonly nutTurns: string
  readonly temperatureC: number | null
  readonly note: string
}

/** Milliseconds of the shop's day at the instant, by the computer's clock. */
function computerMs(at: string, settings: Settings): number {
  const minute = minuteOf(localOf(at, settings.place.timeZone).slice(11)) ?? 0
  return minute * minuteMs + (Date.parse(at) % minuteMs)
}

/** The same by the reference: the error last found in the computer's clock taken off. */
const referenceMs = (read: Read, at: string, settings: Settings): number =>
  computerMs(at, settings) - (latestClockCheck(read)?.errorMs ?? 0)

/** The error typed, in whole milliseconds; null where a stopped clock's was not told. */
function errorMsOf(
  tx: Read,
  { error, stopped }: ReadingEntry,
  at: string,
  settings: Settings,
): number | null {
  if (error !== null && error.trim() !== '')
    return accepted(typedError(error, 'error', referenceMs(tx, at, settings)))
  return stopped ? null : refuse('reading.nothing', 'error')
}

/** A reading follows the one before it; one that corrects another stays between its neighbours. */
function refuseOutOfOrder(tx: Read, run: RunRow, at: string, corrected: ReadingRow | undefined): void {
  if (at < run.startedAt) refuse('reading.beforeStart', 'at')
  const misplaced = corrected ? leavesItsPlace(tx, corrected, at) : isReadAfter(tx, run.id, at)
  if (misplaced) refuse('reading.outOfOrder', 'at')
}

function leavesItsPlace(tx: Read, corrected: ReadingRow, at: string): boolean {
  const others = standingEntries(entriesOf(tx, corrected.runId)).filter(entry => entry.id !== corrected.id)
  const before = others.findLast(entry => entry.at < corrected.at)
  const after = others.find(entry => entry.at > corrected.at)
  return (before !== undefined && at <= before.at) || (after !== undefined && at >= after.at)
}

function refuseHalfHeard({ heardAt, blows }: ReadingEntry): void {
  if ((heardAt === '') !== (blows === null))
    refuse('reading.heardAndBlows', blows === null ? 'blows' : 'heardAt')
}

function write(
  tx: Write,
  run: RunRow,
  input: ReadingEntry,
  at: string,
  corrected: ReadingRow | undefined,
  doing: Doing,
) {
  const settings = readSettings(tx)
  refuseOutOfOrder(tx, run, at, corrected)
  refuseHalfHeard(input)
  const { wound, strikeRight, chimeRight, heardAt, blows, inBeat } = input
  const { stopped, handsSet, nutTurns, temperatureC, note } = input
  const row = tx
    .insert(readings)
    .values({
      runId: run.id,
      at,
      enteredAt: doing.at,
      personId: doing.personId,
      errorMs: errorMsOf(tx, input, at, settings),
      wound,
      strikeRight,
      chimeRight,
      heardAt,
      blows,
      inBeat,
      stopped,
      handsSet,
      nutTurns: Number(nutTurns) === 0 ? '' : nutTurns,
      temperatureC,
      note,
      correctsId: corrected?.id ?? null,
    })
    .returning()
    .get()
  if (corrected) settleAllDues(tx, run.id, settings)
  else settleOpenDues(tx, row, settings)
  return { id: row.id, errorMs: row.errorMs }
}

/** The first entry of a log: wound and set going, with the error its hands were left at; none where that is not told. */
export function startReading(
  tx: Write,
  run: RunRow,
  error: string | null,
  settings: Settings,
  doing: Doing,
): void {
  if (error === null) return
  const errorMs = accepted(typedError(error, 'error', referenceMs(tx, run.startedAt, settings)))
  tx.insert(readings)
    .values({
      runId: run.id,
      at: run.startedAt,
      enteredAt: doing.at,
      personId: doing.personId,
      errorMs,
      wound: true,
      handsSet: true,
    })
    .run()
}

/** Enters a reading of a clock that is running in. */
export const read = verb('shelf.read', (tx, input: ReadingEntry & { runId: number }, doing) => {
  const run = runRow(tx, input.runId)
  if (run.endedAt) refuse('runIn.ended', 'runId')
  const at =
    input.at === null ? doing.at : pastMoment(input.at, readSettings(tx), doing.at, 'at', 'reading.inFuture')
  const result = write(tx, run, input, at, undefined, doing)
  return { subject: { kind: 'run-in', id: run.id }, result }
})

function correctable(tx: Read, readingId: number, now: string): { run: RunRow; corrected: ReadingRow } {
  const corrected = known(
    tx.select().from(readings).where(eq(readings.id, readingId)).get(),
    'reading.unknown',
    'readingId',
  )
  const later = tx.select({ id: readings.id }).from(readings).where(eq(readings.correctsId, readingId)).get()
  if (later || corrected.withdrawn) refuse('reading.corrected', 'readingId')
  const run = runRow(tx, corrected.runId)
  if (run.endedAt) refuse('runIn.ended', 'readingId')
  refuseBackwards(corrected.at, now)
  return { run, corrected }
}

/** Corrects a reading by a new one that counts in its place; the old one stays legible. */
export const correct = verb('shelf.correct', (tx, input: ReadingEntry & { readingId: number }, doing) => {
  const { run, corrected } = correctable(tx, input.readingId, doing.at)
  const at =
    input.at === null
      ? corrected.at
      : pastMoment(input.at, readSettings(tx), doing.at, 'at', 'reading.inFuture')
  const result = write(tx, run, input, at, corrected, doing)
  return { subject: { kind: 'run-in', id: run.id }, result }
})

/** Strikes out a reading that never was, as one entered at the wrong clock; it stays legible with its reason. */
export const strikeReading = verb(
  'shelf.strikeReading',
  (tx, input: { readingId: number; reason: string }, doing) => {
    const { run, corrected } = correctable(tx, input.readingId, doing.at)
    const { id } = tx
      .insert(readings)
      .values({
        runId: run.id,
        at: corrected.at,
        enteredAt: doing.at,
        personId: doing.personId,
        note: input.reason,
        correctsId: corrected.id,
        withdrawn: true,
      })
      .returning()
      .get()
    settleAllDues(tx, run.id, readSettings(tx))
    return { subject: { kind: 'run-in', id: run.id }, result: { id } }
  },
)

/**
 * Records how far this computer's clock is off against a reference: `+2` where it is two seconds fast, or `=10:24:30` for what the
 * reference shows now. Dial times are reckoned with it from then on.
 */
export const compareClock = verb(
  'shelf.compareClock',
  (tx, input: { error: string; reference: string }, doing) => {
    const typed = accepted(typedError(input.error, 'error', computerMs(doing.at, readSettings(tx))))
    const errorMs = input.error.startsWith('=') ? 0 - typed : typed
    const { id } = tx
      .insert(clockChecks)
      .values({ at: doing.at, personId: doing.personId, errorMs, reference: input.reference })
      .returning()
      .get()
    return { subject: { kind: 'shop', id: 1 }, result: { id, errorMs } }
  },
)
