import { eq } from 'drizzle-orm'
import type { MessageAbout, Way } from '../../core/vocabulary/work.ts'
import { known, refuse } from '../rows/refusal.ts'
import { verb } from '../rows/verb.ts'
import { type ConditionEntry, noteOne } from '../rules/condition-notes.ts'
import { repairInShop } from '../rules/facts.ts'
import { conditionNotes, messages, repairs } from '../schema/index.ts'

/** Adds to the condition report, as when something is seen only after the owner has left. */
export const noteCondition = verb(
  'counter.noteCondition',
  (tx, input: ConditionEntry & { repairId: number }, doing) => {
    const { repairId, ...entry } = input
    repairInShop(tx, repairId)
    const id = noteOne(tx, repairId, entry, doing.at)
    return { subject: { kind: 'repair', id: repairId }, result: { id } }
  },
)

/** Strikes out a condition note; it stays legible with its reason. */
export const strikeNote = verb('counter.strikeNote', (tx, input: { noteId: number; reason: string }) => {
  const note = known(
    tx.select().from(conditionNotes).where(eq(conditionNotes.id, input.noteId)).get(),
    'note.unknown',
    'noteId',
  )
  if (note.struckReason) refuse('entry.struck', 'noteId')
  tx.update(conditionNotes).set({ struckReason: input.reason }).where(eq(conditionNotes.id, note.id)).run()
  return { subject: { kind: 'repair', id: note.repairId }, result: { id: note.id } }
})

/** Says a new estimated date; `seen` is the one the writer has seen, where that is to be checked. */
export const estimateDate = verb(
  'counter.estimateDate',
  (
    tx,
    input: { repairId: number; estimatedOn: string | null; seen: { estimatedOn: string | null } | null },
  ) => {
    const { estimatedOn: now } = repairInShop(tx, input.repairId)
    if (input.seen && input.seen.estimatedOn !== now) refuse('repair.dateChanged', '', { on: now ?? '–' })
    tx.update(repairs).set({ estimatedOn: input.estimatedOn }).where(eq(repairs.id, input.repairId)).run()
    return { subject: { kind: 'repair', id: input.repairId }, result: { id: input.repairId } }
  },
)

/** What an owner was told, as it was said or sent. */
export interface Message {
  readonly repairId: number
  readonly about: MessageAbout
  readonly way: Way
  readonly text: string
}

/** Records what an owner was told; that a clock is ready is also kept beside the repair. */
export const tellOwner = verb('counter.tellOwner', (tx, input: Message, doing) => {
  repairInShop(tx, input.repairId)
  const { id } = tx
    .insert(messages)
    .values({ ...input, at: doing.at, personId: doing.personId })
    .returning()
    .get()
  if (input.about === 'ready')
    tx.update(repairs).set({ toldAt: doing.at }).where(eq(repairs.id, input.repairId)).run()
  return { subject: { kind: 'repair', id: input.repairId }, result: { id } }
})
