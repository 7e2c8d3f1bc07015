import { and, desc, eq } from 'drizzle-orm'
import { type Minor, minor } from '../../core/money/minor.ts'
import { authorisedTotal } from '../../core/pricing/authorised.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Read } from '../file/ledger.ts'
import { askedId, question } from '../rows/question.ts'
import { goAheads } from '../schema/index.ts'
import { accepted } from './checked-in.ts'
import type { EstimateRow } from './estimate-rows.ts'

const lastGoAhead = question(read =>
  read
    .select({ limitMinor: goAheads.limitMinor, named: goAheads.limitNamed })
    .from(goAheads)
    .where(and(eq(goAheads.repairId, askedId), eq(goAheads.answer, 'go-ahead')))
    .orderBy(desc(goAheads.id))
    .limit(1),
)

/** What the owner last agreed to for the whole repair, in minor units, and whether that is a sum of the owner's own; nothing while nothing is agreed. */
export function lastAgreed(read: Read, repairId: number): { limitMinor: Minor; named: boolean } | undefined {
  const last = lastGoAhead(read).get({ id: repairId })
  return last && last.limitMinor !== null ? { limitMinor: last.limitMinor, named: last.named } : undefined
}

/** The limit in force, in minor units; null while nothing is agreed. */
export const agreedLimit = (read: Read, repairId: number): Minor | null =>
  lastAgreed(read, repairId)?.limitMinor ?? null

/** The sum agreed to for a repair, and the most its bill may come to: the very sum where the owner named it, else with the shop's margin. Nulls while nothing is agreed. */
export function limitsOf(read: Read, repairId: number, { estimate, place }: Settings) {
  const agreed = lastAgreed(read, repairId)
  if (!agreed) return { agreedMinor: null, mostMinor: null }
  const { limitMinor, named } = agreed
  const most = named ? limitMinor : accepted(authorisedTotal(limitMinor, estimate, place.currency))
  return { agreedMinor: limitMinor, mostMinor: most }
}

/** The limit that a go-ahead on this estimate sets where no other is told: its upper end, with what was agreed before a supplement. */
export function askedLimit(read: Read, { highMinor, totalMinor, supplement, repairId }: EstimateRow): Minor {
  const before = supplement ? (agreedLimit(read, repairId) ?? 0) : 0
  return minor((highMinor ?? totalMinor) + before)
}
