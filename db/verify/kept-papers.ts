import type { Read } from '../file/ledger.ts'
import { allKeptPapers, type KeptPaper, type PaperId, readKeptPaper } from '../rows/kept-papers.ts'
import { documentRow, handedRow } from '../rules/frozen-papers.ts'
import { type Check, type Fault, fault } from './check.ts'
import { namedHanded } from './handed-papers.ts'
import { named } from './papers.ts'

type Kept = KeptPaper & PaperId

const names: Readonly<Record<PaperId['sort'], (read: Read, id: number) => Fault['values']>> = {
  issued: (read, id) => named(documentRow(read, id)),
  handed: (read, id) => namedHanded(read, handedRow(read, id)),
}

function* paperFaults(read: Read, file: string, kept: Kept): Generator<Fault> {
  const found = readKeptPaper(file, kept)
  if (found.state === 'kept' && found.bytes.length === kept.bytes) return
  const values = names[kept.sort](read, kept.id)
  if (found.state !== 'kept') yield fault(`keptPaper.${found.state}`, { ...values, hash: kept.hash })
  else yield fault('keptPaper.length', { ...values, kept: kept.bytes, found: found.bytes.length })
}

/** Every paper as it was first drawn, issued or handed out: its file beside the ledger, with the bytes its name says. */
export const keptPapers: Check = function* ({ read, file }) {
  let looked = 0
  for (const kept of allKeptPapers(read)) {
    yield* paperFaults(read, file, kept)
    looked += 1
  }
  return looked
}
