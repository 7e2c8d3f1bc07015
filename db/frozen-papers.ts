import { eq } from 'drizzle-orm'
import type { PaperContents } from '../core/papers/contents.ts'
import type { DocumentRow } from './issue.ts'
import type { Read } from './ledger.ts'
import { known } from './refusal.ts'
import { documents } from './schema/index.ts'

/** The document, or a refusal. */
export const documentRow = (read: Read, id: number, field = 'documentId'): DocumentRow =>
  known(read.select().from(documents).where(eq(documents.id, id)).get(), 'document.unknown', field)

/** What a document says, as it was frozen. */
export const frozenContents = (row: Pick<DocumentRow, 'contents'>): PaperContents =>
  JSON.parse(row.contents) as PaperContents
