import { and, asc, eq, gt, notExists, sql } from 'drizzle-orm'
import { type FoundBeside, foundBeside, hashOf, pathBeside, writeBeside } from './files-beside.ts'
import type { Ledger, Read } from './ledger.ts'
import { documents, keptPapers } from './schema/index.ts'

/** An issued paper as it was first drawn. `id` is its document's, `bytes` its length, `drawnBy` the program's version. */
export type KeptPaper = typeof keptPapers.$inferSelect

/** Where a paper's file stands: `shop.papers/ab/abcdef….pdf`. */
export const keptPaperPath = (ledgerFile: string, hash: string): string =>
  pathBeside(ledgerFile, 'papers', hash, 'pdf')

/** What is on record of a document's paper; nothing until it has been drawn. */
export const keptPaper = (read: Read, documentId: number): KeptPaper | undefined =>
  read.select().from(keptPapers).where(eq(keptPapers.id, documentId)).get()

/** Reads a kept paper beside the ledger. */
export const readKeptPaper = (ledgerFile: string, { hash }: KeptPaper): FoundBeside =>
  foundBeside(keptPaperPath(ledgerFile, hash), hash)

/** What is known of a document's paper as it was drawn, and whether it is still there; nothing until it has been drawn. */
export function drawnPaper({ read, file }: Pick<Ledger, 'read' | 'file'>, documentId: number) {
  const kept = keptPaper(read, documentId)
  return kept ? { ...kept, state: readKeptPaper(file, kept).state } : null
}

/** Keeps a paper for good: its bytes on disk first, then its row. What was kept before stays as it is. */
export function keepPaper(
  ledger: Ledger,
  { bytes, ...drawn }: Pick<KeptPaper, 'id' | 'size' | 'drawnBy'> & { bytes: Uint8Array },
): void {
  if (keptPaper(ledger.read, drawn.id)) return
  const hash = hashOf(bytes)
  writeBeside(keptPaperPath(ledger.file, hash), bytes)
  const row = { ...drawn, hash, bytes: bytes.length }
  ledger.write(tx => tx.insert(keptPapers).values(row).run())
}

/** The first document after `after` whose paper is not kept yet; nothing where all are. */
export function firstUndrawn(read: Read, after: number): number | undefined {
  const kept = read.select({ one: sql`1` }).from(keptPapers).where(eq(keptPapers.id, documents.id))
  return read
    .select({ id: documents.id })
    .from(documents)
    .where(and(gt(documents.id, after), notExists(kept)))
    .orderBy(asc(documents.id))
    .limit(1)
    .get()?.id
}
