import { eq } from 'drizzle-orm'
import { mayNot } from '../../core/people/may.ts'
import type { Read } from '../file/ledger.ts'
import { Refusal } from '../rows/refusal.ts'
import { people } from '../schema/index.ts'

/** Refuses what the person acting may not do (core/people/may.ts); null for the person is nobody named. */
export function refuseReserved(read: Read, act: string, personId: number | null): void {
  const who =
    personId === null ? null : (read.select().from(people).where(eq(people.id, personId)).get() ?? null)
  const several = read.select().from(people).where(eq(people.active, true)).limit(2).all().length > 1
  const problem = mayNot({ act, who, several })
  if (problem) throw new Refusal([problem])
}
