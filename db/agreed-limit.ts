import { and, desc, eq } from 'drizzle-orm'
import { type Minor, minor } from '../core/money/minor.ts'
import type { EstimateRow } from './estimate-rows.ts'
import type { Read } from './ledger.ts'
import { askedId, question } from './question.ts'
import { goAheads } from './schema/index.ts'

const lastGoAhead = question(read =>
  read
    .select({ limit: goAheads.limitMinor })
    .from(goAheads)
    .where(and(eq(goAheads.repairId, askedId), eq(goAheads.answer, 'go-ahead')))
    .orderBy(desc(goAheads.id))
    .limit(1),
)

/** The limit in force: what the owner last agreed to for the whole repair, in minor units; null while nothing is agreed. */
export const agreedLimit = (read: Read, repairId: number): Minor | null =>
  lastGoAhead(read).get({ id: repairId })?.limit ?? null

/** The limit that a go-ahead on this estimate sets where no other is told: its upper end, with what was agreed before a supplement. */
export function askedLimit(read: Read, { highMinor, totalMinor, supplement, repairId }: EstimateRow): Minor {
  const before = supplement ? (agreedLimit(read, repairId) ?? 0) : 0
  return minor((highMinor ?? totalMinor) + before)
}
