import { asc, gt, notExists, sql } from 'drizzle-orm'
import type { SQLiteColumn } from 'drizzle-orm/sqlite-core'
import type { Read } from '../file/ledger.ts'
import { byId } from '../rows/by-id.ts'
import { dayBookHash, firstHash } from '../rows/verb.ts'
import { dayBook as book, documents, handedPapers } from '../schema/index.ts'
import { type Check, type Fault, fault } from './check.ts'
import { namedHanded } from './handed-papers.ts'
import { named } from './papers.ts'

const rows = (read: Read) =>
  byId((after, limit) =>
    read.select().from(book).where(gt(book.id, after)).orderBy(asc(book.id)).limit(limit).all(),
  )

const noAct = (read: Read, at: SQLiteColumn) =>
  notExists(read.select({ one: sql`1` }).from(book).where(sql`${book.at} = ${at}`))

/** Papers that no act tells of: the acts at the end of the book were taken out. */
function* untold(read: Read): Generator<Fault> {
  const issued = read.select().from(documents).where(noAct(read, documents.issuedAt)).all()
  for (const row of issued) yield fault('dayBook.untold', { ...named(row), at: row.issuedAt })
  const handed = read.select().from(handedPapers).where(noAct(read, handedPapers.handedAt)).all()
  for (const row of handed) yield fault('dayBook.untold', { ...namedHanded(read, row), at: row.handedAt })
}

/** Every row that was acknowledged there, numbered on from the one before, carrying its hash, and hashing to its own. */
export const dayBook: Check = function* ({ read, missing }) {
  if (missing)
    yield fault('dayBook.missing', { count: missing.count ?? '?', from: missing.from, to: missing.to })
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
