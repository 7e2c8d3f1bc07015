import { eq } from 'drizzle-orm'
import type { PaperContents } from '../../core/papers/contents.ts'
import { type PaperSize, usualSize } from '../../core/papers/sizes.ts'
import type { AnyContents, WorkingContents } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { keptPaper, type PaperId, type PaperSort } from '../rows/kept-papers.ts'
import { known } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { documents, handedPapers } from '../schema/index.ts'
import type { DocumentRow } from './issue.ts'

export type HandedRow = typeof handedPapers.$inferSelect

/** The document, or a refusal. */
export const documentRow = (read: Read, id: number, field = 'documentId'): DocumentRow =>
  known(read.select().from(documents).where(eq(documents.id, id)).get(), 'document.unknown', field)

/** The working paper that was handed out, or a refusal. */
export const handedRow = (read: Read, id: number): HandedRow =>
  known(read.select().from(handedPapers).where(eq(handedPapers.id, id)).get(), 'document.unknown', 'id')

/** What a document says, as it was frozen. */
export const frozenContents = (row: Pick<DocumentRow, 'contents'>): PaperContents =>
  JSON.parse(row.contents) as PaperContents

/** What a working paper said when it was handed out. */
export const handedContents = (row: Pick<HandedRow, 'contents'>): WorkingContents =>
  JSON.parse(row.contents) as WorkingContents

/** A paper with frozen contents and the size it goes out on. */
export interface FrozenPaper extends PaperId {
  readonly contents: AnyContents
  readonly size: PaperSize
}

const frozen: Readonly<Record<PaperSort, (read: Read, id: number) => Omit<FrozenPaper, keyof PaperId>>> = {
  // The size is settled by the first drawing; until then it is the one it is going to be drawn on.
  issued: (read, id) => {
    const row = documentRow(read, id)
    const size = keptPaper(read, { sort: 'issued', id })?.size
    return {
      contents: frozenContents(row),
      size: size ?? usualSize(row.kind, readSettings(read).place.paper),
    }
  },
  handed: (read, id) => {
    const row = handedRow(read, id)
    return { contents: handedContents(row), size: row.size }
  },
}

/** What a paper says as it was frozen, and on which size it was issued or handed out; refuses one that is not in the ledger. */
export const frozenPaper = (read: Read, { sort, id }: PaperId): FrozenPaper => ({
  sort,
  id,
  ...frozen[sort](read, id),
})
