import type { Read } from '../file/ledger.ts'
import { owners } from '../schema/index.ts'
import { amongAsked, question, these } from './question.ts'

const mergedInto = question(read =>
  read.select({ id: owners.id }).from(owners).where(amongAsked(owners.mergedIntoId)),
)

/** The owner and every duplicate merged into it, also through others: papers issued to a duplicate keep its number. */
export function withMerged(read: Read, ownerId: number): number[] {
  const ids = [ownerId]
  for (let from = 0; from < ids.length; ) {
    const into = ids.slice(from)
    from = ids.length
    const merged = mergedInto(read).all(these(into))
    ids.push(...merged.map(({ id }) => id).filter(id => !ids.includes(id)))
  }
  return ids
}
