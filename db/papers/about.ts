import { workingKinds as kinds, type WorkingKind, type workingKinds } from '../../core/papers/kinds.ts'
import type { Read } from '../file/ledger.ts'
import { ownerRow } from '../rows/register-rows.ts'
import { estimateRow } from '../rules/estimate-rows.ts'
import { type RepairRow, repairRow } from '../rules/facts.ts'
import { runRow } from '../rules/run-log.ts'

type DrawnOf = (typeof workingKinds)[WorkingKind]['of']

const repairs: Readonly<Record<DrawnOf, (read: Read, id: number) => RepairRow | null>> = {
  repair: repairRow,
  estimate: (read, id) => repairRow(read, estimateRow(read, id).repairId),
  'run-in': (read, id) => repairRow(read, runRow(read, id).repairId),
  owner: () => null,
}

/** Whose a working paper is and of which repair, where it is of one; refuses what is not in the ledger. `id` is of what its kind is drawn of. */
export function aboutPaper(read: Read, kind: WorkingKind, id: number) {
  const repair = repairs[kinds[kind].of](read, id)
  return { repair, ownerId: repair?.ownerId ?? ownerRow(read, id).id }
}
