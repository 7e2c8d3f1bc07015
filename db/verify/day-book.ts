import { and, asc, gt, notExists, sql } from 'drizzle-orm'
import { byId } from '../by-id.ts'
import type { Read } from '../ledger.ts'
import { dayBook as book, documents } from '../schema/index.ts'
import { dayBookHash, firstHash } from '../verb.ts'
import { type Check, type Fault, fault } from './check.ts'

const rows = (read: Read) =>
  byId((after, limit) =>
    read.select().from(book).where(gt(book.id, after)).orderBy(asc(book.id)).limit(limit).all(),
  )

/** Papers that no act tells of: the acts at the end of the book were taken out. */
function* untold(read: Read): Generator<Fault> {
  const told = read.select({ one: sql`1` }).from(book).where(sql`${book.at} = ${documents.issuedAt}`)
  const papers = read
    .select({ kind: documents.kind, number: documents.number, at: documents.issuedAt })
    .from(documents)
    .where(and(notExists(told)))
    .all()
  for (const { kind, number, at } of papers) yield fault('dayBook.untold', { kind, number, at })
}

/** Every row numbered on from the one before, carrying its hash, and hashing to its own. */
export const dayBook: Check = function* ({ read }) {
  let last = { id: 0, hash: firstHash }
  let looked = 0
  for (const row of rows(read)) {
    const { id, at, act } = row
    if (id !== last.id + 1) yield fault('dayBook.gap', { from: last.id + 1, to: id - 1 })
    if (row.previousHash !== last.hash) yield fault('dayBook.chain', { id, at, act })
    if (dayBookHash(row) !== row.hash) yield fault('dayBook.changed', { id, at, act })
    last = row
    looked += 1
  }
  yield* untold(read)
  return looked
}
