import { and, asc, desc, eq, lt, sql } from 'drizzle-orm'
import { sinceBefore } from '../../core/condition/compare.ts'
import type { Read } from '../file/ledger.ts'
import { amongAsked, askedId, question, these } from '../rows/question.ts'
import type { RepairRow } from '../rules/facts.ts'
import * as s from '../schema/index.ts'

const photographs = question(read =>
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
    .where(eq(s.photographUses.repairId, askedId))
    .orderBy(asc(s.photographUses.id)),
)

/** The photographs of a repair in the order they were put there, with when and of what. */
export const photographsOf = (read: Read, repairId: number) => photographs(read).all({ id: repairId })

const notesOf = question(read =>
  read
    .select()
    .from(s.conditionNotes)
    .where(eq(s.conditionNotes.repairId, askedId))
    .orderBy(asc(s.conditionNotes.id)),
)

const pinsOf = question(read =>
  read
    .select()
    .from(s.conditionPins)
    .where(amongAsked(s.conditionPins.noteId))
    .orderBy(asc(s.conditionPins.id)),
)

/** The condition report of a repair: its notes in the order they were written, each with its pins. */
export function conditionOf(read: Read, repairId: number) {
  const notes = notesOf(read).all({ id: repairId })
  const pins = pinsOf(read).all(these(notes.map(note => note.id)))
  return notes.map(note => ({ ...note, pins: pins.filter(pin => pin.noteId === note.id) }))
}

/** The latest visit of the clock before this one that has a condition report. */
const lastReported = question(read =>
  read
    .select({ id: s.repairs.id, number: s.repairs.number, takenInAt: s.repairs.takenInAt })
    .from(s.repairs)
    .innerJoin(s.conditionNotes, eq(s.conditionNotes.repairId, s.repairs.id))
    .where(and(eq(s.repairs.clockId, sql.placeholder('clockId')), lt(s.repairs.id, askedId)))
    .orderBy(desc(s.repairs.id))
    .limit(1),
)

/** The condition report now and that of the clock's last visit, with how each note stands to it; `last` is null on a first visit. */
export function conditionCompared(read: Read, repair: RepairRow) {
  const now = conditionOf(read, repair.id)
  const visit = lastReported(read).get(repair)
  if (!visit) return { condition: now.map(note => ({ ...note, since: null })), lastCondition: null }
  const before = conditionOf(read, visit.id)
  const since = sinceBefore(now, before)
  return {
    condition: now.map((note, i) => ({ ...note, since: since[i] ?? null })),
    lastCondition: { ...visit, condition: before, photographs: photographsOf(read, visit.id) },
  }
}
