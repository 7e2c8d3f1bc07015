import { and, eq, isNull } from 'drizzle-orm'
import { isKept, pictureOf } from '../../core/photograph/picture.ts'
import { hashOf } from '../file/files-beside.ts'
import type { Ledger, Read } from '../file/ledger.ts'
import { type PhotographFile, writePhotograph } from '../file/photograph-files.ts'
import { known, refuse } from '../rows/refusal.ts'
import { type Doing, verb } from '../rows/verb.ts'
import { accepted } from '../rules/checked-in.ts'
import { repairInShop } from '../rules/facts.ts'
import { type Attach, attachOne, photographRow } from '../rules/photographs.ts'
import { conditionNotes, photographs, photographUses } from '../schema/index.ts'

/** A photograph's file as the ledger knows it; `bytes` is its length. */
export interface Keep extends PhotographFile {
  readonly bytes: number
}

/** Puts a photograph on record; its bytes stand beside the ledger under their hash, or come there later with its folder. */
export const keep = verb('photographs.keep', (tx, input: Keep, doing) => {
  if (photographRow(tx, input.hash)) refuse('photograph.kept', 'hash')
  const { id, hash } = tx
    .insert(photographs)
    .values({ ...input, addedAt: doing.at })
    .returning()
    .get()
  return { subject: { kind: 'photograph', id }, result: { id, hash } }
})

const noPlace = new Set(['EACCES', 'EPERM', 'EROFS', 'ENOTDIR', 'EEXIST'])

function write(ledger: Ledger, file: Keep, bytes: Uint8Array): void {
  try {
    writePhotograph(ledger.file, file, bytes)
  } catch (error) {
    if (noPlace.has((error as NodeJS.ErrnoException).code ?? '')) refuse('photograph.noAccess')
    throw error
  }
}

/**
 * Keeps a photograph: its bytes on disk first, then its row. The same bytes again change nothing, but put a file back that was
 * missing. Refuses what is no sound picture by its own bytes, and a kind that no paper could show.
 */
export function keepBytes(ledger: Ledger, doing: Doing, bytes: Uint8Array): { hash: string } {
  const { mediaType } = accepted(pictureOf(bytes))
  if (!isKept(mediaType)) return refuse('photograph.notPrintable')
  const file: Keep = { hash: hashOf(bytes), mediaType, bytes: bytes.length }
  const row = photographRow(ledger.read, file.hash)
  if (row && row.mediaType !== mediaType) refuse('photograph.otherKind')
  write(ledger, file, bytes)
  return { hash: row ? row.hash : keep(ledger, doing, file).hash }
}

function noteOfRepair(tx: Read, { noteId, repairId }: Attach): void {
  if (noteId === null) return
  const note = tx.select().from(conditionNotes).where(eq(conditionNotes.id, noteId)).get()
  if (note?.repairId !== repairId) refuse('note.unknown', 'noteId')
  if (note.struckReason) refuse('entry.struck', 'noteId')
}

const usedThere = (tx: Read, { hash, repairId, noteId }: Attach) =>
  tx
    .select({ id: photographUses.id })
    .from(photographUses)
    .where(
      and(
        eq(photographUses.hash, hash),
        eq(photographUses.repairId, repairId),
        noteId === null ? isNull(photographUses.noteId) : eq(photographUses.noteId, noteId),
        isNull(photographUses.struckReason),
      ),
    )
    .get()

/** Puts a kept photograph beside a repair in the shop, or beside one of its condition notes; the same one only once. */
export const attach = verb('photographs.attach', (tx, input: Attach, doing) => {
  repairInShop(tx, input.repairId)
  noteOfRepair(tx, input)
  if (usedThere(tx, input)) refuse('photograph.attached', 'hash')
  const id = attachOne(tx, input, doing.at)
  return { subject: { kind: 'repair', id: input.repairId }, result: { id } }
})

/** Strikes a photograph out of a repair; it stays to be seen with the reason. */
export const strike = verb('photographs.strike', (tx, input: { useId: number; reason: string }) => {
  const use = known(
    tx.select().from(photographUses).where(eq(photographUses.id, input.useId)).get(),
    'photograph.unknown',
    'useId',
  )
  if (use.struckReason) refuse('entry.struck', 'useId')
  tx.update(photographUses).set({ struckReason: input.reason }).where(eq(photographUses.id, use.id)).run()
  return { subject: { kind: 'repair', id: use.repairId }, result: { id: use.id } }
})
