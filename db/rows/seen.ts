import { createHash } from 'node:crypto'
import { desc, eq, inArray } from 'drizzle-orm'
import { type Problem, problem } from '../../core/problems.ts'
import type { Read } from '../file/ledger.ts'
import { dayBook, people } from '../schema/index.ts'
import { refuse, refuseAny } from './refusal.ts'

type Value = string | number | boolean | null

/** Every value of `now` that is no longer what the writer has seen, told on its own field; nothing where all are. */
function changedSince<T extends Readonly<Record<string, Value>>>(seen: T, now: T): Problem[] {
  return Object.entries(seen).flatMap(([field, value]) => {
    const stands = now[field] ?? null
    return stands === value
      ? []
      : [problem('record.changedMeanwhile', field, { field, now: String(stands ?? '') })]
  })
}

/**
 * Refuses to write over what somebody else changed since the writer saw it. Null says that nothing was seen, as a day book of before
 * this was asked does: then nothing is compared.
 */
export function refuseUnseen<T extends object>(seen: T | null, now: T): void {
  if (seen) refuseAny(changedSince({ ...seen } as Record<string, Value>, { ...now } as Record<string, Value>))
}

/** A short mark of a record as it stands: a writer who has seen it gives it back. */
export const stampOf = (record: unknown): string =>
  createHash('sha256').update(JSON.stringify(record)).digest('hex').slice(0, 16)

/**
 * Refuses to write over a record that is not the one whose stamp the writer has seen, with who changed it last and when. `acts` are
 * those that change it; null says that nothing was seen.
 */
export function refuseStale(read: Read, seen: string | null, record: unknown, acts: readonly string[]): void {
  if (seen === null || seen === stampOf(record)) return
  const last = read
    .select({ at: dayBook.at, who: people.name })
    .from(dayBook)
    .leftJoin(people, eq(people.id, dayBook.personId))
    .where(inArray(dayBook.act, [...acts]))
    .orderBy(desc(dayBook.id))
    .limit(1)
    .get()
  refuse('record.changedSince', '', { who: last?.who ?? '–', at: last?.at ?? '–' })
}
