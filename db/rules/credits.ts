import { asc, eq } from 'drizzle-orm'
import type { CreditNoteContents } from '../../core/papers/contents.ts'
import type { Read } from '../file/ledger.ts'
import { documents } from '../schema/index.ts'
import { frozenContents } from './frozen-papers.ts'

/** The credit notes of an invoice so far, in order. */
export const creditsOf = (read: Read, invoiceId: number): CreditNoteContents[] =>
  read
    .select({ contents: documents.contents })
    .from(documents)
    .where(eq(documents.correctsId, invoiceId))
    .orderBy(asc(documents.id))
    .all()
    .map(row => frozenContents(row) as CreditNoteContents)
