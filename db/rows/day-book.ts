import { asc, desc, eq, gte, sql } from 'drizzle-orm'
import { commitmentTo, firstHash, type Link, rowHash, saltBytes } from '../file/chain.ts'
import { hexOf } from '../file/identity.ts'
import type { Read, Write } from '../file/ledger.ts'
import type { Outside } from '../file/outside.ts'
import { dayBook } from '../schema/index.ts'
import { askedId, question } from './question.ts'
import { refuse } from './refusal.ts'

/** An act as it goes into the day book, where it is chained and its input committed to. */
export interface Entered extends Omit<Link, 'previousHash' | 'commitment'> {
  /** The checked input as JSON text. */
  readonly input: string
  /** What is answered, as JSON text. */
  readonly result: string
}

/** Writes an act into the day book, chained to the row before it. */
export function enter(tx: Write, { input, result, ...entered }: Entered, random: Outside['random']): void {
  const last = tx.select({ hash: dayBook.hash }).from(dayBook).orderBy(desc(dayBook.id)).limit(1).get()
  const salt = hexOf(random(saltBytes))
  const link = { ...entered, commitment: commitmentTo(salt, input), previousHash: last?.hash ?? firstHash }
  // Only who has a key can ask again for what was answered.
  const kept = link.key === null ? null : result
  tx.insert(dayBook)
    .values({ ...link, salt, input, result: kept, hash: rowHash(link) })
    .run()
}

const byKey = question(read =>
  read
    .select({ act: dayBook.act, input: dayBook.input, result: dayBook.result })
    .from(dayBook)
    .where(eq(dayBook.key, sql.placeholder('key'))),
)

/** Whether an act was done under this key; where none is named, none was. */
export const isKeyUsed = (read: Read, key: string | null | undefined): boolean =>
  typeof key === 'string' && byKey(read).get({ key }) !== undefined

/**
 * What was answered when the act was done under this key; undefined where nothing was. Refuses with `act.keyUsed` where the key was
 * another act's, or the same one's with other words, and with `act.keyRedacted` where nobody can tell any more.
 */
export function answeredBefore(read: Read, key: string, act: string, input: string): string | undefined {
  const done = byKey(read).get({ key })
  if (!done) return undefined
  if (done.act === act && done.input === null) return refuse('act.keyRedacted')
  if (done.act !== act || done.input !== input || done.result === null) return refuse('act.keyUsed')
  return done.result
}

const last = question(read =>
  read.select({ at: dayBook.at }).from(dayBook).orderBy(desc(dayBook.id)).limit(1),
)

const rowsFrom = question(read =>
  read
    .select({ id: dayBook.id, hash: dayBook.hash, at: dayBook.at })
    .from(dayBook)
    .where(gte(dayBook.id, askedId))
    .orderBy(asc(dayBook.id))
    .limit(2),
)

/**
 * The instant of the first entry after a row known by its number and hash; null where there is none. A ledger that went another way
 * than the row known counts as new from its first entry on.
 */
export function firstEntryAfter(read: Read, known: { count: number; hash: string } | null): string | null {
  const [row, next] = rowsFrom(read).all({ id: known?.count ?? 0 })
  if (known && known.count > 0 && row?.hash === known.hash) return next?.at ?? null
  return rowsFrom(read).all({ id: 0 })[0]?.at ?? null
}

/** The instant of the last entry; undefined while there is none. */
export const lastEntryAt = (read: Read): string | undefined => last(read).get()?.at
