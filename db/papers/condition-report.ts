import { civilDateOf } from '../../core/calendar/zone.ts'
import type { ConditionReportContents, ReportNote, ReportPhotograph } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { conditionOf, photographsOf } from '../read/condition.ts'
import { repairAndTop } from './top.ts'

type NoteRow = ReturnType<typeof conditionOf>[number]
type PhotographRow = ReturnType<typeof photographsOf>[number]

/** The condition report of a repair: what still stands of its notes and photographs. */
export function conditionReportContents(read: Read, repairId: number, at: string): ConditionReportContents {
  const { repair, top, timeZone } = repairAndTop(read, repairId, at)
  const notes = conditionOf(read, repair.id).filter(note => note.struckReason === null)
  const places = new Map(notes.map((note, i) => [note.id, i + 1]))
  const dayOf = (instant: string) => civilDateOf(instant, timeZone)
  return {
    ...top,
    kind: 'condition-report',
    takenInOn: dayOf(repair.takenInAt),
    fault: repair.fault,
    springs: repair.springs,
    notes: notes.map(note => reportNote(note, dayOf)),
    photographs: photographsOf(read, repair.id)
      .filter(use => use.struckReason === null)
      .map(use => reportPhotograph(use, places, dayOf)),
    ...(repair.signedInBy ? { signedIn: { name: repair.signedInBy, at: repair.takenInAt } } : {}),
  }
}

const reportNote = (note: NoteRow, dayOf: (instant: string) => string): ReportNote => ({
  component: note.component,
  grade: note.grade,
  ...(note.finish ? { finish: note.finish } : {}),
  ...(note.earlierRepair ? { earlierRepair: note.earlierRepair } : {}),
  ...(note.remark ? { remark: note.remark } : {}),
  notedOn: dayOf(note.notedAt),
  pins: note.pins.map(({ view, x, y }) => ({ view, x, y })),
})

function reportPhotograph(
  { hash, moment, addedAt, remark, noteId }: PhotographRow,
  places: ReadonlyMap<number, number>,
  dayOf: (instant: string) => string,
): ReportPhotograph {
  const note = noteId === null ? undefined : places.get(noteId)
  return {
    hash,
    moment,
    addedOn: dayOf(addedAt),
    ...(remark ? { remark } : {}),
    ...(note === undefined ? {} : { note }),
  }
}
