import { eq } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { Exclusion } from '../../core/vocabulary/work.ts'
import type { Read } from '../file/ledger.ts'
import { refuse } from '../rows/refusal.ts'
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
}

/** The comeback while its clock is in the shop, and the repair it came back from. */
function comeback(read: Read, repairId: number) {
  const repair = repairInShop(read, repairId)
  if (repair.comebackOfId === null) refuse('comeback.none', 'repairId', { number: repair.number })
  return { repair, earlier: repairRow(read, repair.comebackOfId) }
}

/** Decides anew whether a comeback is covered, as when the strip shows what it comes from; the warranty is asked as of the day the clock came in. */
export const decideCover = verb('counter.decideCover', (tx, input: DecideCover, doing) => {
  const { repair, earlier } = comeback(tx, input.repairId)
  const { repairId, covered, causes } = input
  if (covered)
    refuseUncovered(tx, earlier, causes, civilDateOf(repair.takenInAt, readSettings(tx).place.timeZone))
  tx.update(repairs)
    .set({ covered, comebackCauses: [...causes] })
    .where(eq(repairs.id, repairId))
    .run()
  const { stage } = settle(tx, repairId, doing.at)
  return { subject: { kind: 'repair', id: repairId }, result: { id: repairId, covered, stage } }
})
