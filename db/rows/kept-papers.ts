import { asc, eq, gt, sql } from 'drizzle-orm'
import { type FoundBeside, foundBeside, hashOf, pathBeside, writeBeside } from '../file/files-beside.ts'
import type { Ledger, Read } from '../file/ledger.ts'
import { documents, handedPapers, keptHandedPapers, keptPapers } from '../schema/index.ts'
import { byId } from './by-id.ts'

/**
 * Where papers with frozen contents stand, and where what is known of their files does; a file's row has its paper's id. They are
 * drawn in this order: what was handed out are few, and looked at on their page at once.
 */
const sorts = {
  handed: { papers: handedPapers, files: keptHandedPapers },
  issued: { papers: documents, files: keptPapers },
}

/** Documents as they were issued, or working papers as they were handed to the owner. */
export type PaperSort = keyof typeof sorts
const paperSorts = Object.keys(sorts) as readonly PaperSort[]

/** Which paper with frozen contents. */
export interface PaperId {
  readonly sort: PaperSort
  readonly id: number
}

/** A paper as it was first drawn. `id` is the paper's own, `bytes` its length, `drawnBy` the program's version. */
export type KeptPaper = typeof keptPapers.$inferSelect

/** The table of the files of papers of one sort. */
const keptFiles = (sort: PaperSort): typeof keptPapers => sorts[sort].files

/** Where a paper's file stands: `shop.papers/ab/abcdef….pdf`. */
export const keptPaperPath = (ledgerFile: string, hash: string): string =>
  pathBeside(ledgerFile, 'papers', hash, 'pdf')

/** What is on record of a paper's file; nothing until it has been drawn. */
export function keptPaper(read: Read, { sort, id }: PaperId): KeptPaper | undefined {
  const files = keptFiles(sort)
  return read.select().from(files).where(eq(files.id, id)).get()
}

function keptOf(read: Read, sort: PaperSort): Iterable<KeptPaper> {
  const files = keptFiles(sort)
  return byId((after, limit) =>
    read.select().from(files).where(gt(files.id, after)).orderBy(asc(files.id)).limit(limit).all(),
  )
}

/** Every paper that is kept, read a page at a time. */
export function* allKeptPapers(read: Read): Generator<KeptPaper & PaperId> {
  for (const sort of paperSorts) for (const kept of keptOf(read, sort)) yield { ...kept, sort }
}

/** Reads a kept paper beside the ledger. */
export const readKeptPaper = (ledgerFile: string, { hash }: KeptPaper): FoundBeside =>
  foundBeside(keptPaperPath(ledgerFile, hash), hash)

/** What is known of a paper as it was drawn, and whether it is still there; nothing until it has been drawn. */
export function drawnPaper({ read, file }: Pick<Ledger, 'read' | 'file'>, paper: PaperId) {
  const kept = keptPaper(read, paper)
  return kept ? { ...kept, state: readKeptPaper(file, kept).state } : null
}

/** Keeps a paper for good: its bytes on disk first, then its row. What was kept before stays as it is. */
export function keepPaper(
  ledger: Ledger,
  { sort, id }: PaperId,
  { bytes, ...drawn }: Pick<KeptPaper, 'size' | 'drawnBy'> & { bytes: Uint8Array },
): void {
  if (keptPaper(ledger.read, { sort, id })) return
  const hash = hashOf(bytes)
  writeBeside(keptPaperPath(ledger.file, hash), bytes)
  const row = { id, ...drawn, hash, bytes: bytes.length }
  ledger.write(tx => tx.insert(keptFiles(sort)).values(row).run())
}

/** Up to which paper of each sort no more is looked for. */
export type Passed = Readonly<Record<PaperSort, number>>

/** Before every paper. */
export const nonePassed: Passed = { issued: 0, handed: 0 }

function firstUndrawnOf(read: Read, sort: PaperSort, after: number): PaperId | undefined {
  const { papers, files } = sorts[sort]
  const found = read.get<{ id: number }>(sql`
    SELECT id FROM ${papers} WHERE id > ${after} AND id NOT IN (SELECT id FROM ${files}) ORDER BY id LIMIT 1`)
  return found && { sort, id: found.id }
}

/** The first paper after those passed that is not kept yet; nothing where all are. */
export function firstUndrawn(read: Read, passed: Passed): PaperId | undefined {
  for (const sort of paperSorts) {
    const found = firstUndrawnOf(read, sort, passed[sort])
    if (found) return found
  }
  return undefined
}
