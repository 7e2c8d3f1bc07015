import { and, desc, eq } from 'drizzle-orm'
import type { Minor } from '../core/money/minor.ts'
import type { Read } from './ledger.ts'
import { goAheads } from './schema/index.ts'

/** The limit in force: what the owner last agreed to for the whole repair, in minor units; null while nothing is agreed. */
export const agreedLimit = (read: Read, repairId: number): Minor | null =>
  read
    .select({ limit: goAheads.limitMinor })
    .from(goAheads)
    .where(and(eq(goAheads.repairId, repairId), eq(goAheads.answer, 'go-ahead')))
    .orderBy(desc(goAheads.id))
    .limit(1)
    .get()?.limit ?? null
