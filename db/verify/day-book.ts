import { asc, eq, gt, notExists, sql } from 'drizzle-orm'
import type { SQLiteColumn } from 'drizzle-orm/sqlite-core'
import { commitmentTo, firstHash, rowHash } from '../file/chain.ts'
import type { Read } from '../file/ledger.ts'
import { byId } from '../rows/by-id.ts'
import { type RedactInput, redactAct } from '../rows/redactions.ts'
import { dayBook as book, documents, handedPapers, people } from '../schema/index.ts'
import { type Check, type Fault, fault, note } from './check.ts'
import { namedHanded } from './handed-papers.ts'
import { named } from './papers.ts'

type Row = typeof book.$inferSelect

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

/** What was taken out of a row: by which act, why, when. */
interface Redacted {
  readonly commitment: string
  readonly values: Fault['values']
}

/** The rows that a redaction names. */
function namedBy(read: Read, row: Row): (readonly [number, Redacted])[] {
  if (row.act !== redactAct || row.input === null) return []
  const { rows, reason } = JSON.parse(row.input) as RedactInput
  const by = row.personId === null ? '–' : (nameOf(read, row.personId) ?? '–')
  return rows.map(({ id, commitment }) => [id, { commitment, values: { id, by, reason, at: row.at } }])
}

const nameOf = (read: Read, id: number) =>
  read.select({ name: people.name }).from(people).where(eq(people.id, id)).get()?.name

/** What stands against one row by itself. */
function* rowFaults(row: Row): Generator<Fault> {
  const { id, at, act, salt, input } = row
  const isCommitted = salt === null || input === null || commitmentTo(salt, input) === row.commitment
  if (!isCommitted || rowHash(row) !== row.hash) yield fault('dayBook.changed', { id, at, act })
}

/** Every row that was acknowledged there, numbered on from the one before, carrying its hash, and hashing to its own; what was taken out, named. */
export const dayBook: Check = function* ({ read, missing }) {
  if (missing)
    yield fault('dayBook.missing', { count: missing.count ?? '?', from: missing.from, to: missing.to })
  let last = { id: 0, hash: firstHash }
  let looked = 0
  const emptied = new Map<number, Row>()
  for (const row of rows(read)) {
    const { id, at, act } = row
    if (id !== last.id + 1) yield fault('dayBook.gap', { from: last.id + 1, to: id - 1 })
    if (row.previousHash !== last.hash) yield fault('dayBook.chain', { id, at, act })
    yield* rowFaults(row)
    if (row.input === null) emptied.set(id, row)
    for (const [named, { commitment, values }] of namedBy(read, row)) {
      if (emptied.get(named)?.commitment !== commitment) continue
      emptied.delete(named)
      yield note('dayBook.redacted', values)
    }
    last = row
    looked += 1
  }
  for (const { id, at, act } of emptied.values()) yield fault('dayBook.emptied', { id, at, act })
  yield* untold(read)
  return looked
}
