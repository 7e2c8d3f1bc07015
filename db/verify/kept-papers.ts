import { asc, eq, gt } from 'drizzle-orm'
import { byId } from '../by-id.ts'
import { type KeptPaper, readKeptPaper } from '../kept-papers.ts'
import type { Read } from '../ledger.ts'
import { documents, keptPapers as table } from '../schema/index.ts'
import { type Check, type Fault, fault } from './check.ts'

const rows = (read: Read) =>
  byId((after, limit) =>
    read.select().from(table).where(gt(table.id, after)).orderBy(asc(table.id)).limit(limit).all(),
  )

const named = (read: Read, { id, hash }: KeptPaper) => {
  const { kind, number } = documents
  return { ...read.select({ kind, number }).from(documents).where(eq(documents.id, id)).get(), hash }
}

function* paperFaults(read: Read, file: string, row: KeptPaper): Generator<Fault> {
  const found = readKeptPaper(file, row)
  if (found.state !== 'kept') yield fault(`keptPaper.${found.state}`, named(read, row))
  else if (found.bytes.length !== row.bytes)
    yield fault('keptPaper.length', { ...named(read, row), kept: row.bytes, found: found.bytes.length })
}

/** Every paper as it was first drawn: its file beside the ledger, with the bytes its name says. */
export const keptPapers: Check = function* ({ read, file }) {
  let looked = 0
  for (const row of rows(read)) {
    yield* paperFaults(read, file, row)
    looked += 1
  }
  return looked
}
