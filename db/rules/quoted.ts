import { desc, eq } from 'drizzle-orm'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { Read } from '../file/ledger.ts'
import { estimates } from '../schema/index.ts'
import { agreedLimit } from './agreed-limit.ts'
import { repairBalance } from './balance.ts'

/** What the owner agreed to, or else what was last quoted; null where neither is on record. */
const quoted = (read: Read, repairId: number): Minor | null =>
  agreedLimit(read, repairId) ??
  read
    .select({ total: estimates.totalMinor })
    .from(estimates)
    .where(eq(estimates.repairId, repairId))
    .orderBy(desc(estimates.version))
    .limit(1)
    .get()?.total ??
  null

/** By how much what is paid on a repair passes what was agreed or quoted; 0 where it does not, or nothing was said. */
export function aboveQuoted(read: Read, repairId: number): Minor {
  const sum = quoted(read, repairId)
  return sum === null ? minor(0) : minor(Math.max(repairBalance(read, repairId).paid - sum, 0))
}
