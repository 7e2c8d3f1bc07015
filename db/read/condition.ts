import { and, asc, desc, eq, inArray, lt } from 'drizzle-orm'
import { sinceBefore } from '../../core/condition/compare.ts'
import type { RepairRow } from '../facts.ts'
import type { Read } from '../ledger.ts'
import * as s from '../schema/index.ts'

/** The photographs of a repair in the order they were put there, with when and of what. */
export const photographsOf = (read: Read, repairId: number) =>
  read
    .select({
      id: s.photographUses.id,
      hash: s.photographUses.hash,
      noteId: s.photographUses.noteId,
      moment: s.photographUses.moment,
      addedAt: s.photographUses.addedAt,
      remark: s.photographUses.remark,
      struckReason: s.photographUses.struckReason,
    })
    .from(s.photographUses)
    .where(eq(s.photographUses.repairId, repairId))
    .orderBy(asc(s.photographUses.id))
    .all()

/** The condition report of a repair: its notes in the order they were written, each with its pins. */
export function conditionOf(read: Read, repairId: number) {
  const notes = read
    .select()
    .from(s.conditionNotes)
    .where(eq(s.conditionNotes.repairId, repairId))
    .orderBy(asc(s.conditionNotes.id))
    .all()
  const ids = notes.map(note => note.id)
  const pins = read
    .select()
    .from(s.conditionPins)
    .where(inArray(s.conditionPins.noteId, ids))
    .orderBy(asc(s.conditionPins.id))
    .all()
  return notes.map(note => ({ ...note, pins: pins.filter(pin => pin.noteId === note.id) }))
}

/** The latest visit of the clock before this one that has a condition report. */
const lastReported = (read: Read, { id, clockId }: RepairRow) =>
  read
    .select({ id: s.repairs.id, number: s.repairs.number, takenInAt: s.repairs.takenInAt })
    .from(s.repairs)
    .innerJoin(s.conditionNotes, eq(s.conditionNotes.repairId, s.repairs.id))
    .where(and(eq(s.repairs.clockId, clockId), lt(s.repairs.id, id)))
    .orderBy(desc(s.repairs.id))
    .limit(1)
    .get()

/** The condition report now and that of the clock's last visit, with how each note stands to it; `last` is null on a first visit. */
export function conditionCompared(read: Read, repair: RepairRow) {
  const now = conditionOf(read, repair.id)
  const visit = lastReported(read, repair)
  if (!visit) return { condition: now.map(note => ({ ...note, since: null })), lastCondition: null }
  const before = conditionOf(read, visit.id)
  const since = sinceBefore(now, before)
  return {
    condition: now.map((note, i) => ({ ...note, since: since[i] ?? null })),
    lastCondition: { ...visit, condition: before, photographs: photographsOf(read, visit.id) },
  }
}
