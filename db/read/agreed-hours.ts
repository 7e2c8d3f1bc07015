import { and, asc, eq, inArray } from 'drizzle-orm'
import { minutesOfHours } from '../../core/labour/hours.ts'
import type { Read } from '../ledger.ts'
import { estimateLines, estimates, goAheads } from '../schema/index.ts'

/** The estimates that make up what the owner agreed to: the last one, with its supplements. */
function agreedEstimateIds(read: Read, repairId: number): number[] {
  const rows = read
    .select({ id: estimates.id, supplement: estimates.supplement })
    .from(goAheads)
    .innerJoin(estimates, eq(estimates.id, goAheads.estimateId))
    .where(and(eq(goAheads.repairId, repairId), eq(goAheads.answer, 'go-ahead')))
    .orderBy(asc(estimates.version))
    .all()
  const base = rows.filter(row => !row.supplement).at(-1)
  return rows.filter(row => row.supplement || row === base).map(row => row.id)
}

/** The bench minutes the owner agreed to: the hours of the labour lines; null where nothing is agreed. */
export function agreedMinutes(read: Read, repairId: number): number | null {
  const ids = agreedEstimateIds(read, repairId)
  if (ids.length === 0) return null
  const lines = read
    .select({ quantity: estimateLines.quantity })
    .from(estimateLines)
    .where(and(inArray(estimateLines.estimateId, ids), eq(estimateLines.kind, 'labour')))
    .all()
  return minutesOfHours(lines.map(line => line.quantity))
}
