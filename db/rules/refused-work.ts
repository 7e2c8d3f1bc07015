import { and, eq } from 'drizzle-orm'
import { cautionBefore, refusedWork } from '../../core/cautions/refused-work.ts'
import type { LineWork, Task } from '../../core/vocabulary/work.ts'
import type { Read } from '../file/ledger.ts'
import { refuse } from '../rows/refusal.ts'
import { clockRow } from '../rows/register-rows.ts'
import { cautionsSeen } from '../schema/index.ts'
import type { RepairRow } from './facts.ts'

/** Refuses a task, or work told in words alone (null), that may come to what a caution forbids, until the caution is on record as seen. */
export function refuseUnseenCaution(read: Read, repair: RepairRow, task: Task | null, field: string): void {
  const caution = cautionBefore(clockRow(read, repair.clockId), task)
  if (!caution) return
  const seen = read
    .select({ id: cautionsSeen.id })
    .from(cautionsSeen)
    .where(and(eq(cautionsSeen.repairId, repair.id), eq(cautionsSeen.caution, caution)))
    .get()
  if (!seen) refuse(`unseen.${caution}`, field)
}

/** Refuses work on this clock that a caution forbids, on its field; what the work is in words alone asks for the caution to be seen. */
export function refuseForbiddenWork(
  read: Read,
  repair: RepairRow,
  work: LineWork | null,
  field: string,
): void {
  if (work === null) {
    refuseUnseenCaution(read, repair, null, field)
    return
  }
  const caution = refusedWork(clockRow(read, repair.clockId), work)
  if (caution) refuse(`refused.${caution}`, field)
}
