import { inArray } from 'drizzle-orm'
import type { Read } from './ledger.ts'
import { owners } from './schema/index.ts'

/** The owner and every duplicate merged into it, also through others: papers issued to a duplicate keep its number. */
export function withMerged(read: Read, ownerId: number): number[] {
  const ids = [ownerId]
  for (let from = 0; from < ids.length; ) {
    const into = ids.slice(from)
    from = ids.length
    const merged = read.select({ id: owners.id }).from(owners).where(inArray(owners.mergedIntoId, into)).all()
    ids.push(...merged.map(({ id }) => id).filter(id => !ids.includes(id)))
  }
  return ids
}
