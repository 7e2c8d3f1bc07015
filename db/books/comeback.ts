import { eq } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { Exclusion } from '../../core/vocabulary/work.ts'
import type { Read } from '../file/ledger.ts'
import { refuse } from '../rows/refusal.ts'
import { refuseUnseen } from '../rows/seen.ts'
import { readSettings } from '../rows/settings.ts'
import { verb } from '../rows/verb.ts'
import { repairInShop, repairRow, settle } from '../rules/facts.ts'
import { refuseUncovered } from '../rules/warranty-cover.ts'
import { repairs } from '../schema/index.ts'

/** Whether a comeback falls under the warranty it came back on. */
export interface DecideCover {
  readonly repairId: number
  readonly covered: boolean
  /** What its fault comes from, among the things a warranty may leave out. */
  readonly causes: readonly Exclusion[]
  /** Why it is covered although the warranty does not cover it; '' where the warranty alone decides. */
  readonly goodwill: string
  /** The decision as the writer has seen it; null in older day books. */
  readonly seen: Decided | null
}

interface Decided {
  readonly covered: boolean
  readonly causes: readonly Exclusion[]
  readonly goodwill: string
}

/** A decision as it is compared. */
const comparable = ({ covered, causes, goodwill }: Decided) => ({
  covered,
  causes: [...new Set(causes)].sort().join(', '),
  goodwill,
})

/** The comeback while its clock is in the shop, and the repair it came back from. */
function comeback(read: Read, repairId: number) {
  const repair = repairInShop(read, repairId)
  if (repair.comebackOfId === null) refuse('comeback.none', 'repairId', { number: repair.number })
  return { repair, earlier: repairRow(read, repair.comebackOfId) }
}

/** Decides anew whether a comeback is covered, as when the strip shows what it comes from: by its warranty as of the day the clock came in, or by the shop's goodwill with its reason. */
export const decideCover = verb('counter.decideCover', (tx, input: DecideCover, doing) => {
  const { repair, earlier } = comeback(tx, input.repairId)
  const { repairId, covered, causes, seen } = input
  const goodwill = covered ? input.goodwill : ''
  refuseUnseen(
    seen && comparable(seen),
    comparable({ covered: repair.covered, causes: repair.comebackCauses, goodwill: repair.goodwill }),
  )
  if (covered && goodwill === '')
    refuseUncovered(tx, earlier, causes, civilDateOf(repair.takenInAt, readSettings(tx).place.timeZone))
  tx.update(repairs)
    .set({ covered, comebackCauses: [...new Set(causes)], goodwill })
    .where(eq(repairs.id, repairId))
    .run()
  const { stage } = settle(tx, repairId, doing.at)
  return { subject: { kind: 'repair', id: repairId }, result: { id: repairId, covered, stage } }
})
