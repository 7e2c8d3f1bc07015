import { eq } from 'drizzle-orm'
import { minuteOf } from '../../core/calendar/local.ts'
import { minuteMs } from '../../core/calendar/units.ts'
import { localOf } from '../../core/calendar/zone.ts'
import { typedError } from '../../core/rate/typed-error.ts'
import { foretoldOtherwise } from '../../core/run-in/foretold.ts'
import { shelfLog, standingEntries } from '../../core/run-in/log.ts'
import type { ShelfEvent } from '../../core/run-in/shelf-reading.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Read, Write } from '../file/ledger.ts'
import { latestClockCheck } from '../rows/clock-check.ts'
import { known, refuse } from '../rows/refusal.ts'
import { clockRow } from '../rows/register-rows.ts'
import { readSettings } from '../rows/settings.ts'
import { type Doing, verb } from '../rows/verb.ts'
import { accepted } from '../rules/checked-in.ts'
import { repairRow } from '../rules/facts.ts'
import { pastMoment, refuseBackwards } from '../rules/moments.ts'
import {
  entriesOf,
  isReadAfter,
  limitsOf,
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
  /** Seconds fast or slow as found and typed, such as `+0:02`; null where it was not read. */
  readonly error: string | null
  /** The same as the hands were left; null where they were not set. */
  readonly left: string | null
  readonly wound: boolean
  readonly stopped: boolean
  /** Decimal text, '' for none. */
  readonly nutTurns: string
  readonly event: ShelfEvent | null
  readonly hour: { readonly shown: number; readonly counted: number } | null
  readonly half: number | null
  readonly quarter: { readonly which: 1 | 2 | 3 | 4; readonly right: boolean } | null
  readonly twelveRight: boolean
  readonly fourRight: boolean
  readonly selfCorrected: boolean | null
  readonly silent: boolean | null
  readonly repeats: boolean | null
  readonly inBeat: boolean | null
  /** The strike or chime as a whole, where nothing was counted. */
  readonly strikeRight: boolean | null
  readonly chimeRight: boolean | null
  readonly temperatureC: number | null
  readonly note: string
  /** A figure far from what the log foretells was looked at again, and stands. */
  readonly sure: boolean
}

/** Milliseconds of the shop's day at the instant, by the computer's clock. */
function computerMs(at: string, settings: Settings): number {
  const minute = minuteOf(localOf(at, settings.place.timeZone).slice(11)) ?? 0
  return minute * minuteMs + (Date.parse(at) % minuteMs)
}

/** The same by the reference: the error last found in the computer's clock taken off. */
const referenceMs = (read: Read, at: string, settings: Settings): number =>
  computerMs(at, settings) - (latestClockCheck(read)?.errorMs ?? 0)

/** What was typed of the hands, in whole milliseconds; null where nothing was. */
function handsMs(tx: Read, typed: string | null, field: string, at: string, settings: Settings) {
  if (typed === null || typed.trim() === '') return null
  return accepted(typedError(typed, field, referenceMs(tx, at, settings)))
}

/** Whether an entry says anything at all. */
const saysNothing = ({ at: _, sure: __, note, nutTurns, ...said }: ReadingEntry): boolean =>
  note === '' &&
  Number(nutTurns) === 0 &&
  Object.values(said).every(one => one === null || one === false || one === '')

/** A reading is put in at its time, also late, as from paper; at one and the same time there is one. */
function refuseOutOfOrder(tx: Read, run: RunRow, at: string, corrected: ReadingRow | undefined): void {
  if (at < run.startedAt) refuse('reading.beforeStart', 'at')
  const others = standingEntries(entriesOf(tx, run.id)).filter(entry => entry.id !== corrected?.id)
  if (others.some(entry => entry.at === at)) refuse('reading.sameTime', 'at')
}

/** Asks about a figure far from what the log foretells, once. */
function refuseUnlikely(
  tx: Read,
  run: RunRow,
  { sure }: ReadingEntry,
  values: Hands,
  corrected?: ReadingRow,
): void {
  const { at, errorMs } = values
  if (sure || errorMs === null || values.stopped) return
  const clock = clockRow(tx, repairRow(tx, run.repairId).clockId)
  const before = shelfLog(entriesOf(tx, run.id)).filter(one => one.at < at && one.at !== corrected?.at)
  const foretold = foretoldOtherwise(
    before,
    Date.parse(at),
    errorMs / 1000,
    limitsOf(run, clock, readSettings(tx)),
  )
  if (foretold !== null) refuse('reading.unlikely', 'error', { foretold: Math.round(foretold) })
}

interface Hands {
  readonly at: string
  readonly errorMs: number | null
  readonly stopped: boolean
}

/** Everything of an entry as it stands in the ledger. */
function valuesOf(tx: Read, input: ReadingEntry, at: string, settings: Settings) {
  const { hour, half, quarter, nutTurns, at: _, error, left, sure: __, ...as } = input
  return {
    ...as,
    at,
    errorMs: handsMs(tx, error, 'error', at, settings),
    leftMs: handsMs(tx, left, 'left', at, settings),
    nutTurns: Number(nutTurns) === 0 ? '' : nutTurns,
    hourShown: hour?.shown ?? null,
    hourCounted: hour?.counted ?? null,
    halfCounted: half,
    quarter: quarter?.which ?? null,
    quarterRight: quarter?.right ?? null,
  }
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
  if (saysNothing(input)) refuse('reading.nothing', 'error')
  const values = valuesOf(tx, input, at, settings)
  refuseUnlikely(tx, run, input, values, corrected)
  const isLate = isReadAfter(tx, run.id, at)
  const row = tx
    .insert(readings)
    .values({
      ...values,
      runId: run.id,
      enteredAt: doing.at,
      personId: doing.personId,
      correctsId: corrected?.id ?? null,
    })
    .returning()
    .get()
  if (corrected || isLate) settleAllDues(tx, run.id, settings)
  else settleOpenDues(tx, row, settings)
  return { id: row.id, errorMs: row.errorMs, leftMs: row.leftMs }
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
      leftMs: errorMs,
      wound: true,
    })
    .run()
}

/** Notes in the log that a clock was moved; a stretch of free running ends with it. */
export function noteMove(tx: Write, run: RunRow, doing: Doing): void {
  const taken = new Set(standingEntries(entriesOf(tx, run.id)).map(entry => entry.at))
  // An entry of the very same instant was made before the clock was moved.
  let ms = Date.parse(doing.at)
  while (taken.has(new Date(ms).toISOString())) ms += 1
  const at = new Date(ms).toISOString()
  tx.insert(readings)
    .values({ runId: run.id, at, enteredAt: at, personId: doing.personId, event: 'moved' })
    .run()
}

/** Enters a reading of a clock that is running in. */
export const read = verb('shelf.read', (tx, input: ReadingEntry & { runId: number }, doing) => {
  const run = runRow(tx, input.runId)
  if (run.endedAt) refuse('runIn.ended', 'runId')
  const at =
    input.at === null ? doing.at : pastMoment(input.at, readSettings(tx), doing.at, 'at', 'reading.inFuture')
  const { runId: _, ...entry } = input
  const result = write(tx, run, entry, at, undefined, doing)
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
  const { readingId: _, ...entry } = input
  const result = write(tx, run, entry, at, corrected, doing)
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
