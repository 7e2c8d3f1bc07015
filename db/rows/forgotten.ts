import { and, eq, inArray, isNull, notInArray, type SQL, sql } from 'drizzle-orm'
import { mediaTypes } from '../../core/photograph/picture.ts'
import type { Read, Write } from '../file/ledger.ts'
import type { NeededFile } from '../file/look.ts'
import * as s from '../schema/index.ts'
import { redactAct } from './redactions.ts'

/** Whom forgetting an owner is about: the owner with duplicates merged into it, their repairs, and the clocks that are theirs now. */
export interface Forgotten {
  readonly owners: readonly number[]
  readonly repairs: readonly number[]
  readonly clocks: readonly number[]
}

const idsOf = (rows: readonly { id: number }[]) => rows.map(({ id }) => id)

/** What belongs to the owners. */
export const forgottenOf = (read: Read, owners: readonly number[]): Forgotten => ({
  owners,
  repairs: idsOf(
    read
      .select({ id: s.repairs.id })
      .from(s.repairs)
      .where(inArray(s.repairs.ownerId, [...owners]))
      .all(),
  ),
  clocks: idsOf(
    read
      .select({ id: s.clockOwners.clockId })
      .from(s.clockOwners)
      .where(and(inArray(s.clockOwners.ownerId, [...owners]), isNull(s.clockOwners.untilAt)))
      .all(),
  ),
})

/** In the place of a text that may not be empty. */
const gone = '–'

/** Takes out of the rows about the owners what is about the person. docs/decisions/day-book.md says of every column why. */
export function emptyRows(tx: Write, { owners, repairs, clocks }: Forgotten): void {
  const ofRepairs = (column: Parameters<typeof inArray>[0]): SQL => inArray(column, [...repairs])
  for (const id of owners)
    tx.update(s.owners)
      .set({ name: `Forgotten owner ${id}`, address: '', country: '', notes: '' })
      .where(eq(s.owners.id, id))
      .run()
  tx.delete(s.ownerContacts)
    .where(inArray(s.ownerContacts.ownerId, [...owners]))
    .run()
  tx.update(s.clocks)
    .set({ notes: '' })
    .where(inArray(s.clocks.id, [...clocks]))
    .run()
  tx.update(s.repairs)
    .set({ fault: gone, agreedWords: '', signedInBy: '', readyReason: '', goodwill: '' })
    .where(ofRepairs(s.repairs.id))
    .run()
  tx.update(s.belongings)
    .set({ description: '', unreturnedReason: '' })
    .where(ofRepairs(s.belongings.repairId))
    .run()
  tx.update(s.conditionNotes).set({ remark: '' }).where(ofRepairs(s.conditionNotes.repairId)).run()
  tx.update(s.goAheads).set({ who: gone, remark: '' }).where(ofRepairs(s.goAheads.repairId)).run()
  tx.update(s.handOvers)
    .set({ toName: gone, authority: '', unpaidReason: '' })
    .where(ofRepairs(s.handOvers.repairId))
    .run()
  tx.update(s.messages).set({ text: gone }).where(ofRepairs(s.messages.repairId)).run()
  tx.update(s.waits).set({ note: '' }).where(ofRepairs(s.waits.repairId)).run()
  tx.update(s.labourEntries).set({ note: '' }).where(ofRepairs(s.labourEntries.repairId)).run()
  tx.update(s.estimates).set({ remark: '' }).where(ofRepairs(s.estimates.repairId)).run()
}

/** Takes the photographs of the repairs off the record; returns the files that nothing else shows. */
export function dropPhotographs(tx: Write, { repairs }: Forgotten): NeededFile[] {
  const used = tx
    .selectDistinct({ hash: s.photographUses.hash })
    .from(s.photographUses)
    .where(inArray(s.photographUses.repairId, [...repairs]))
    .all()
    .map(({ hash }) => hash)
  tx.delete(s.photographUses)
    .where(inArray(s.photographUses.repairId, [...repairs]))
    .run()
  const still = tx.selectDistinct({ hash: s.photographUses.hash }).from(s.photographUses)
  const rows = tx
    .delete(s.photographs)
    .where(and(inArray(s.photographs.hash, used), notInArray(s.photographs.hash, still)))
    .returning()
    .all()
  return rows.map(({ hash, mediaType }) => ({ what: 'photographs', hash, ending: mediaTypes[mediaType] }))
}

/** Takes the working papers handed to the owners off the record; returns the files of their drawings. */
export function dropHandedPapers(tx: Write, { owners }: Forgotten): NeededFile[] {
  for (const id of owners) tx.insert(s.forgetting).values({ id }).run()
  const theirs = inArray(s.handedPapers.ownerId, [...owners])
  const ids = idsOf(tx.select({ id: s.handedPapers.id }).from(s.handedPapers).where(theirs).all())
  const drawn = tx.delete(s.keptHandedPapers).where(inArray(s.keptHandedPapers.id, ids)).returning().all()
  tx.delete(s.handedPapers).where(theirs).run()
  tx.delete(s.forgetting).run()
  return drawn.map(({ hash }) => ({ what: 'papers', hash, ending: 'pdf' }))
}

/** Names and ways to reach the owners, as they stand and as the day book has them from before. */
export function knownTexts(read: Read, { owners }: Forgotten): string[] {
  const names = read
    .select()
    .from(s.owners)
    .where(inArray(s.owners.id, [...owners]))
    .all()
  const contacts = read
    .select()
    .from(s.ownerContacts)
    .where(inArray(s.ownerContacts.ownerId, [...owners]))
    .all()
  const before = read
    .select({ input: s.dayBook.input })
    .from(s.dayBook)
    .where(and(eq(s.dayBook.subjectKind, 'owner'), inArray(s.dayBook.subjectId, [...owners])))
    .all()
    .map(({ input }) => (JSON.parse(input ?? '{}') as { name?: unknown }).name)
  const texts = [...names.map(({ name }) => name), ...contacts.map(({ value }) => value), ...before]
  return [...new Set(texts.filter((text): text is string => typeof text === 'string' && text.length > 2))]
}

/** The rows of the day book that tell of the owners, or whose input has one of the texts as a whole value. */
export function rowsAbout(read: Read, about: Forgotten, texts: readonly string[]) {
  const { owners, repairs, clocks } = about
  const list = (ids: readonly number[]) => sql`(SELECT value FROM json_each(${JSON.stringify(ids)}))`
  const values = JSON.stringify(texts.map(text => JSON.stringify(text)))
  return read.all<{ id: number; commitment: string }>(sql`
    SELECT id, commitment FROM day_book WHERE input IS NOT NULL AND act <> ${redactAct} AND (
      (subject_kind = 'owner' AND subject_id IN ${list(owners)})
      OR (subject_kind = 'clock' AND subject_id IN ${list(clocks)})
      OR (subject_kind = 'repair' AND subject_id IN ${list(repairs)})
      OR (subject_kind = 'estimate' AND subject_id IN (SELECT id FROM estimates WHERE repair_id IN ${list(repairs)}))
      OR (subject_kind = 'run-in' AND subject_id IN (SELECT id FROM run_in_runs WHERE repair_id IN ${list(repairs)}))
      OR (subject_kind = 'document' AND subject_id IN (SELECT id FROM documents WHERE owner_id IN ${list(owners)}))
      OR (subject_kind = 'write-off' AND subject_id IN (SELECT id FROM write_offs WHERE repair_id IN ${list(repairs)}))
      OR EXISTS (SELECT 1 FROM json_each(${values}) t WHERE instr(day_book.input, t.value) > 0))
    ORDER BY id`)
}

/** Throws away what is half typed and has one of the texts in it. */
export const dropDrafts = (tx: Write, texts: readonly string[]): void =>
  void tx.run(sql`
    DELETE FROM drafts WHERE EXISTS (
      SELECT 1 FROM json_each(${JSON.stringify(texts)}) t
      WHERE instr(drafts.body, t.value) > 0 OR instr(drafts.title, t.value) > 0)`)

/** Builds the index of find anew, so that nothing of what stood in it is left. */
export function rebuildFind(tx: Write): void {
  for (const index of ['find_words', 'find_marks'])
    tx.run(sql`INSERT INTO ${sql.raw(index)} (${sql.raw(index)}) VALUES ('rebuild')`)
}
