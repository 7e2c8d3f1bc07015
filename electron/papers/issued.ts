import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type PaperSize, usualSize } from '../../core/papers/sizes.ts'
import { en } from '../../core/words/en/index.ts'
import { hashOf } from '../../db/files-beside.ts'
import { documentRow, frozenContents } from '../../db/frozen-papers.ts'
import type { DocumentRow } from '../../db/issue.ts'
import { firstUndrawn, keepPaper, keptPaper, readKeptPaper } from '../../db/kept-papers.ts'
import type { Ledger, Read } from '../../db/ledger.ts'
import { readSettings } from '../../db/settings.ts'
import { places } from '../places.ts'
import { renderPaper } from './paper.ts'

/** Which program draws: its name's version, as `0.1.0`. */
export const drawnBy: string = JSON.parse(readFileSync(join(places.root, 'package.json'), 'utf8')).version

/** The size a document's paper was issued on; until it is kept the one it is going to be. */
export const issuedSize = (read: Read, row: DocumentRow): PaperSize =>
  keptPaper(read, row.id)?.size ?? usualSize(row.kind, readSettings(read).place.paper)

const draw = (row: DocumentRow, size: PaperSize, again = false) =>
  renderPaper(frozenContents(row), { size, words: en, again })

/**
 * The paper of a document on a size it comes on. On the size it was issued on these are the very bytes that were kept. Where they
 * are not to be had, and on any other size, it is drawn again and says so of itself, unless that gives the same bytes.
 */
export async function issuedPaper(
  { read, file }: Ledger,
  row: DocumentRow,
  size: PaperSize,
): Promise<Uint8Array> {
  const kept = keptPaper(read, row.id)
  if (size !== issuedSize(read, row)) return draw(row, size, true)
  if (!kept) return draw(row, size)
  const found = readKeptPaper(file, kept)
  if (found.state === 'kept') return found.bytes
  const drawn = await draw(row, size)
  return hashOf(drawn) === kept.hash ? drawn : draw(row, size, true)
}

/**
 * Draws and keeps the first paper issued after the document `after` that is not kept yet, unless it was `stopped` meanwhile. Returns
 * its document; nothing where all are kept. A paper that cannot be drawn is told, and left for the next start.
 */
export async function keepNext(
  ledger: Ledger,
  after: number,
  stopped: () => boolean = () => false,
): Promise<number | undefined> {
  const id = firstUndrawn(ledger.read, after)
  if (id === undefined) return undefined
  const row = documentRow(ledger.read, id)
  const size = issuedSize(ledger.read, row)
  try {
    const bytes = await draw(row, size)
    if (!stopped()) keepPaper(ledger, { id, size, drawnBy, bytes })
  } catch (error) {
    console.error(error)
  }
  return id
}

/** Draws and keeps every paper that is not kept yet, one by one and in order. */
export async function keepPapers(ledger: Ledger): Promise<void> {
  for (let id: number | undefined = 0; id !== undefined; ) id = await keepNext(ledger, id)
}
