import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { PaperSize } from '../../core/papers/sizes.ts'
import { en } from '../../core/words/en/index.ts'
import { hashOf } from '../../db/file/files-beside.ts'
import type { Ledger } from '../../db/file/ledger.ts'
import {
  firstUndrawn,
  keepPaper,
  keptPaper,
  nonePassed,
  type Passed,
  readKeptPaper,
} from '../../db/rows/kept-papers.ts'
import { type FrozenPaper, frozenPaper } from '../../db/rules/frozen-papers.ts'
import { places } from '../places.ts'
import { renderPaper } from './paper.ts'
import { photographsOf } from './photographs.ts'

/** Which program draws: its name's version, as `0.1.0`. */
export const drawnBy: string = JSON.parse(readFileSync(join(places.root, 'package.json'), 'utf8')).version

const draw = (ledger: Ledger, { contents }: FrozenPaper, size: PaperSize, again = false) =>
  renderPaper(contents, { size, words: en, photographs: photographsOf(ledger), again })

/**
 * A paper with frozen contents on a size it comes on. On the size it was issued or handed out on these are the very bytes that were
 * kept. Where they are not to be had, and on any other size, it is drawn again and says so of itself, unless that gives the same bytes.
 */
export async function frozenBytes(ledger: Ledger, paper: FrozenPaper, size: PaperSize): Promise<Uint8Array> {
  const kept = keptPaper(ledger.read, paper)
  if (size !== paper.size) return draw(ledger, paper, size, true)
  if (!kept) return draw(ledger, paper, size)
  const found = readKeptPaper(ledger.file, kept)
  if (found.state === 'kept') return found.bytes
  const drawn = await draw(ledger, paper, size)
  return hashOf(drawn) === kept.hash ? drawn : draw(ledger, paper, size, true)
}

/**
 * Draws and keeps the first paper after those passed that is not kept yet, unless it was `stopped` meanwhile. Returns what is passed
 * then; nothing where all are kept. A paper that cannot be drawn is told, and left for the next start.
 */
export async function keepNext(
  ledger: Ledger,
  passed: Passed,
  stopped: () => boolean = () => false,
): Promise<Passed | undefined> {
  const next = firstUndrawn(ledger.read, passed)
  if (next === undefined) return undefined
  try {
    const paper = frozenPaper(ledger.read, next)
    const bytes = await draw(ledger, paper, paper.size)
    if (!stopped()) keepPaper(ledger, next, { size: paper.size, drawnBy, bytes })
  } catch (error) {
    console.error(error)
  }
  return { ...passed, [next.sort]: next.id }
}

/** Draws and keeps every paper that is not kept yet, one by one and in order. */
export async function keepPapers(ledger: Ledger): Promise<void> {
  for (let passed: Passed | undefined = nonePassed; passed; ) passed = await keepNext(ledger, passed)
}
