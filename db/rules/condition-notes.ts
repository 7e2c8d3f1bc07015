import type { Component, EarlierRepair, Finish, Grade, View } from '../../core/vocabulary/intake.ts'
import type { Write } from '../file/ledger.ts'
import { conditionNotes, conditionPins } from '../schema/index.ts'
import { attachOne } from './photographs.ts'

/** One component as seen, with the places pinned on the outline drawing (0…1 from the left and from the top). */
export interface ConditionEntry {
  readonly component: Component
  readonly finish: Finish | ''
  readonly grade: Grade
  readonly earlierRepair: EarlierRepair | ''
  readonly remark: string
  readonly pins: readonly { view: View; x: number; y: number }[]
  /** Hashes of kept photographs that show it. */
  readonly photographs: readonly string[]
}

/** Photographs taken at the counter, of the whole clock or of what one note says. */
export function showIntake(
  tx: Write,
  repairId: number,
  noteId: number | null,
  shown: readonly string[],
  at: string,
  field: string,
) {
  for (const [i, hash] of [...new Set(shown)].entries())
    attachOne(tx, { hash, repairId, noteId, moment: 'intake', remark: '' }, at, `${field}photographs[${i}]`)
}

/** Writes one note with its pins and photographs and returns its number. */
export function noteOne(tx: Write, repairId: number, entry: ConditionEntry, at: string, field = ''): number {
  const { pins, photographs, ...note } = entry
  const { id } = tx
    .insert(conditionNotes)
    .values({ repairId, ...note, notedAt: at })
    .returning()
    .get()
  for (const pin of pins)
    tx.insert(conditionPins)
      .values({ noteId: id, ...pin })
      .run()
  showIntake(tx, repairId, id, photographs, at, field)
  return id
}
