import { and, asc, eq, max } from 'drizzle-orm'
import { stepsFor } from '../../core/bench/steps.ts'
import { isOverdue } from '../../core/calendar/due.ts'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { hoursByWork } from '../../core/labour/by-work.ts'
import { isForgotten } from '../../core/labour/forgotten.ts'
import { entryMinutes, totalMinutes } from '../../core/labour/minutes.ts'
import type { Read } from '../file/ledger.ts'
import { askedId, question } from '../rows/question.ts'
import { isUnanswered, type RepairRow } from '../rules/facts.ts'
import { partsUsedOn } from '../rules/parts-used.ts'
import * as s from '../schema/index.ts'
import { agreedLabour, minutesByRepair } from './agreed-hours.ts'

const labour = question(read =>
  read
    .select({ entry: s.labourEntries, person: s.people.name })
    .from(s.labourEntries)
    .leftJoin(s.people, eq(s.people.id, s.labourEntries.personId))
    .where(eq(s.labourEntries.repairId, askedId))
    .orderBy(asc(s.labourEntries.startedAt), asc(s.labourEntries.id)),
)

/** Labour on a repair, each entry with its minutes; a running one counts up to `at`. */
export function labourOf(read: Read, repairId: number, at: string, timeZone: string) {
  const entries = labour(read)
    .all({ id: repairId })
    .map(({ entry, person }) => ({
      ...entry,
      person,
      on: civilDateOf(entry.startedAt, timeZone),
      minutes: entryMinutes(entry, at),
      forgotten: isForgotten(entry, at, timeZone),
    }))
  const agreed = agreedLabour(read, [repairId])
  return {
    entries,
    totalMinutes: totalMinutes(entries, at),
    agreedMinutes: minutesByRepair(agreed).get(repairId) ?? null,
    byWork: hoursByWork(agreed.lines, entries, at),
    running: entries.filter(entry => entry.endedAt === null && entry.struckReason === null),
  }
}

const outsideWork = question(read =>
  read
    .select({ work: s.outsideWork, vendor: s.vendors.name })
    .from(s.outsideWork)
    .innerJoin(s.vendors, eq(s.vendors.id, s.outsideWork.vendorId))
    .where(eq(s.outsideWork.repairId, askedId))
    .orderBy(asc(s.outsideWork.id)),
)

/** Work given out of the house, overdue where its day has passed. */
export const outsideWorkOf = (read: Read, repairId: number, today: string) =>
  outsideWork(read)
    .all({ id: repairId })
    .map(({ work, vendor }) => ({
      ...work,
      vendor,
      overdue: work.backAt === null && isOverdue(work.dueOn, today),
    }))

const orders = question(read =>
  read
    .select({ order: s.partOrders, part: s.parts.name })
    .from(s.partOrders)
    .innerJoin(s.parts, eq(s.parts.id, s.partOrders.partId))
    .where(eq(s.partOrders.repairId, askedId))
    .orderBy(asc(s.partOrders.id)),
)

const lastWordAt = question(read =>
  read
    .select({ at: max(s.goAheads.at) })
    .from(s.goAheads)
    .where(eq(s.goAheads.repairId, askedId)),
)

const findings = question(read =>
  read.select().from(s.findings).where(eq(s.findings.repairId, askedId)).orderBy(asc(s.findings.id)),
)

const asFound = question(read =>
  read.select().from(s.asFound).where(eq(s.asFound.repairId, askedId)).orderBy(asc(s.asFound.id)),
)

const waits = question(read =>
  read.select().from(s.waits).where(eq(s.waits.repairId, askedId)).orderBy(asc(s.waits.id)),
)

const cautionsSeen = question(read =>
  read.select().from(s.cautionsSeen).where(eq(s.cautionsSeen.repairId, askedId)),
)

/** What was found, each saying whether the owner's word on it is still to come. */
function findingsOf(read: Read, repairId: number) {
  const id = { id: repairId }
  const lastWord = lastWordAt(read).get(id)
  return findings(read)
    .all(id)
    .map(finding => ({
      ...finding,
      unanswered:
        finding.needsWord && finding.struckReason === null && isUnanswered(finding.at, lastWord?.at ?? ''),
    }))
}

const stepsDone = question(read =>
  read
    .select({ step: s.stepsDone.step, at: s.stepsDone.at, person: s.people.name })
    .from(s.stepsDone)
    .leftJoin(s.people, eq(s.people.id, s.stepsDone.personId))
    .where(and(eq(s.stepsDone.repairId, askedId), eq(s.stepsDone.done, true))),
)

/** The steps of the clock's service, each with when and by whom it was ticked. */
function stepsOf(read: Read, repairId: number, clock: typeof s.clocks.$inferSelect) {
  const ticks = new Map(
    stepsDone(read)
      .all({ id: repairId })
      .map(({ step, ...tick }) => [step, tick]),
  )
  return stepsFor(clock).map(step => ({ ...step, done: ticks.get(step.code) ?? null }))
}

/** What the bench has on record of a repair. */
export function benchCard(
  read: Read,
  repair: RepairRow,
  clock: typeof s.clocks.$inferSelect,
  at: string,
  timeZone: string,
) {
  const today = civilDateOf(at, timeZone)
  const { id } = repair
  return {
    labour: labourOf(read, repair.id, at, timeZone),
    findings: findingsOf(read, repair.id),
    asFound: asFound(read).all({ id }),
    waits: waits(read).all({ id }),
    parts: partsUsedOn(read, repair.id),
    orders: orders(read)
      .all({ id })
      .map(({ order, part }) => ({ ...order, part })),
    outsideWork: outsideWorkOf(read, repair.id, today),
    cautionsSeen: cautionsSeen(read).all({ id }),
    steps: stepsOf(read, repair.id, clock),
  }
}
