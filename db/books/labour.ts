import { and, eq, gt, isNull, lt, or } from 'drizzle-orm'
import { minuteMs } from '../../core/calendar/units.ts'
import { localOf } from '../../core/calendar/zone.ts'
import { entryMinutes, labourMinutes, longestStretchMinutes } from '../../core/labour/minutes.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Task } from '../../core/vocabulary/work.ts'
import type { Read, Write } from '../file/ledger.ts'
import { known, refuse } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { type Doing, verb } from '../rows/verb.ts'
import { type RepairRow, repairInShop, repairOpenTo, repairRow, settle, standingOf } from '../rules/facts.ts'
import { pastMoment, refuseBackwards } from '../rules/moments.ts'
import { refuseUnseenCaution } from '../rules/refused-work.ts'
import { labourEntries } from '../schema/index.ts'

type LabourRow = typeof labourEntries.$inferSelect

const ofPerson = (personId: number | null) =>
  personId === null ? isNull(labourEntries.personId) : eq(labourEntries.personId, personId)

/** The entry whose clock runs for a person (null: for nobody named). */
export const runningEntry = (read: Read, personId: number | null): LabourRow | undefined =>
  read
    .select()
    .from(labourEntries)
    .where(and(ofPerson(personId), isNull(labourEntries.endedAt), isNull(labourEntries.struckReason)))
    .get()

/** Looking a clock over comes before the estimate; every other task waits for the go-ahead. */
const repairForTask = (tx: Read, repairId: number, task: Task): RepairRow =>
  task === 'assess' ? repairInShop(tx, repairId) : repairOpenTo(tx, repairId, 'work')

/** A clock that has left the bench may still have labour entered that was done there. */
const leftTheBench: readonly string[] = ['standing.runningIn', 'standing.alreadyReady']

function repairForTyped(tx: Read, repairId: number, task: Task): RepairRow {
  const repair = repairInShop(tx, repairId)
  const blocked = standingOf(tx, repair).blocked.find(({ act }) => act === 'work')
  if (task !== 'assess' && blocked && !leftTheBench.includes(blocked.code)) refuse(blocked.code)
  return repair
}

function refuseTooLong(from: string, to: string, field: string): void {
  if (labourMinutes(from, to) > longestStretchMinutes) refuse('labour.tooLong', field)
}

/** Ends a running entry; one that was forgotten overnight must be told when it really ended. */
function end(tx: Write, entry: LabourRow, endedAt: string, now: string): void {
  refuseTooLong(entry.startedAt, endedAt, 'endedAt')
  tx.update(labourEntries).set({ endedAt }).where(eq(labourEntries.id, entry.id)).run()
  settle(tx, entry.repairId, now)
}

/** Stops what runs when another entry begins: at once on the same repair, on another one only when told to. */
function stopForAnother(tx: Write, input: StartLabour, doing: Doing): void {
  const running = runningEntry(tx, doing.personId)
  if (!running) return
  if (running.repairId !== input.repairId && !input.switch)
    refuse('labour.running', 'switch', { number: repairRow(tx, running.repairId).number })
  refuseBackwards(running.startedAt, doing.at)
  end(tx, running, doing.at, doing.at)
}

/** Stops every labour clock that runs on a repair which begins to wait; one forgotten for too long stays, to be asked about. */
export function stopAllOn(tx: Write, repairId: number, doing: Doing): void {
  const running = tx
    .select()
    .from(labourEntries)
    .where(
      and(
        eq(labourEntries.repairId, repairId),
        isNull(labourEntries.endedAt),
        isNull(labourEntries.struckReason),
      ),
    )
    .all()
  for (const entry of running) {
    refuseBackwards(entry.startedAt, doing.at)
    if (labourMinutes(entry.startedAt, doing.at) <= longestStretchMinutes) end(tx, entry, doing.at, doing.at)
  }
}

export interface StartLabour {
  readonly repairId: number
  readonly task: Task
  /** Stops the clock that runs on another repair first. */
  readonly switch: boolean
}

/** Starts the labour clock of the person acting. It is a recorded instant, so it survives any restart. */
export const startLabour = verb('bench.startLabour', (tx, input: StartLabour, doing) => {
  const { repairId, task } = input
  refuseUnseenCaution(tx, repairForTask(tx, repairId, task), task, 'task')
  stopForAnother(tx, input, doing)
  const { id } = tx
    .insert(labourEntries)
    .values({ repairId, personId: doing.personId, task, startedAt: doing.at })
    .returning()
    .get()
  settle(tx, repairId, doing.at)
  return { subject: { kind: 'repair', id: repairId }, result: { id } }
})

/** Stops the labour clock of the person acting: now, or at the time it really ended where it was forgotten. */
export const stopLabour = verb('bench.stopLabour', (tx, input: { endedAt: string | null }, doing) => {
  const running = runningEntry(tx, doing.personId) ?? refuse('labour.notRunning')
  refuseBackwards(running.startedAt, doing.at)
  const settings = readSettings(tx)
  const endedAt =
    input.endedAt === null
      ? doing.at
      : pastMoment(input.endedAt, settings, doing.at, 'endedAt', 'labour.inFuture')
  if (endedAt < running.startedAt) refuse('labour.endBeforeStart', 'endedAt')
  end(tx, running, endedAt, doing.at)
  return {
    subject: { kind: 'repair', id: running.repairId },
    result: { id: running.id, minutes: entryMinutes({ ...running, endedAt }, endedAt) },
  }
})

/** Labour typed afterwards: from and to on the shop's clocks, or so many minutes of a day. */
export interface EnterLabour {
  readonly repairId: number
  readonly task: Task
  readonly from: string | null
  readonly to: string | null
  readonly minutes: number | null
  readonly on: string | null
  readonly note: string
}

interface Stretch {
  readonly startedAt: string
  readonly endedAt: string
  readonly timed: boolean
}

const minutesLater = (at: string, minutes: number): string =>
  new Date(Date.parse(at) + minutes * minuteMs).toISOString()

function timedStretch(input: EnterLabour, settings: Settings, now: string): Stretch {
  const moment = (field: 'from' | 'to') =>
    pastMoment(input[field] ?? refuse('input.required', field), settings, now, field, 'labour.inFuture')
  const [startedAt, endedAt] = [moment('from'), moment('to')]
  if (endedAt <= startedAt) refuse('labour.endBeforeStart', 'to')
  refuseTooLong(startedAt, endedAt, 'to')
  return { startedAt, endedAt, timed: true }
}

/** Minutes without times: today's have just ended, an earlier day's are carried by its noon. */
function untimedStretch(input: EnterLabour, minutes: number, settings: Settings, now: string): Stretch {
  const on = input.on ?? refuse('input.required', 'on')
  const today = localOf(now, settings.place.timeZone).slice(0, 10)
  if (on > today) refuse('labour.inFuture', 'on')
  if (minutes > longestStretchMinutes) refuse('labour.tooLong', 'minutes')
  if (on === today) return { startedAt: minutesLater(now, -minutes), endedAt: now, timed: false }
  const startedAt = pastMoment(`${on}T12:00`, settings, now, 'on', 'labour.inFuture')
  const endedAt = minutesLater(startedAt, minutes)
  if (endedAt > now) refuse('labour.inFuture', 'minutes')
  return { startedAt, endedAt, timed: false }
}

/** Nobody works on two clocks at once: refuses a stretch that runs into another one of the same person whose times are known. */
function refuseOverlap(tx: Write, { startedAt, endedAt, timed }: Stretch, personId: number | null): void {
  if (!timed || personId === null) return
  const other = tx
    .select({ repairId: labourEntries.repairId })
    .from(labourEntries)
    .where(
      and(
        eq(labourEntries.personId, personId),
        eq(labourEntries.timed, true),
        isNull(labourEntries.struckReason),
        lt(labourEntries.startedAt, endedAt),
        or(isNull(labourEntries.endedAt), gt(labourEntries.endedAt, startedAt)),
      ),
    )
    .limit(1)
    .get()
  if (other) refuse('labour.overlap', 'from', { number: repairRow(tx, other.repairId).number })
}

/** Enters labour that was not clocked, also once the clock has left the bench. */
export const enterLabour = verb('bench.enterLabour', (tx, input: EnterLabour, doing) => {
  const settings = readSettings(tx)
  const repair = repairForTyped(tx, input.repairId, input.task)
  refuseUnseenCaution(tx, repair, input.task, 'task')
  if (input.minutes !== null && (input.from ?? input.to) !== null) refuse('labour.eitherWay', 'minutes')
  const stretch =
    input.minutes === null
      ? timedStretch(input, settings, doing.at)
      : untimedStretch(input, input.minutes, settings, doing.at)
  refuseOverlap(tx, stretch, doing.personId)
  const { task, note } = input
  const row = tx
    .insert(labourEntries)
    .values({ repairId: repair.id, personId: doing.personId, task, note, ...stretch })
    .returning()
    .get()
  settle(tx, repair.id, doing.at)
  return {
    subject: { kind: 'repair', id: repair.id },
    result: { id: row.id, minutes: entryMinutes({ ...row, struckReason: null }, doing.at) },
  }
})

/** Strikes out a labour entry; it stays legible with its reason and counts no more. */
export const strikeLabour = verb(
  'bench.strikeLabour',
  (tx, input: { entryId: number; reason: string }, doing) => {
    const entry = known(
      tx.select().from(labourEntries).where(eq(labourEntries.id, input.entryId)).get(),
      'labour.unknown',
      'entryId',
    )
    if (entry.struckReason) refuse('entry.struck', 'entryId')
    repairInShop(tx, entry.repairId)
    tx.update(labourEntries).set({ struckReason: input.reason }).where(eq(labourEntries.id, entry.id)).run()
    settle(tx, entry.repairId, doing.at)
    return { subject: { kind: 'repair', id: entry.repairId }, result: { id: entry.id } }
  },
)
