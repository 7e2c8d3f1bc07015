import { eq } from 'drizzle-orm'
import { verb } from '../rows/verb.ts'
import { repairOpenTo, settle } from '../rules/facts.ts'
import { repairs } from '../schema/index.ts'

/** Says a clock is ready without a run-in, and why none is needed (as for an estimate only, or a case repair). */
export const declareReady = verb(
  'bench.declareReady',
  (tx, input: { repairId: number; reason: string }, doing) => {
    const repair = repairOpenTo(tx, input.repairId, 'declare-ready')
    tx.update(repairs)
      .set({ readyAt: doing.at, readyReason: input.reason })
      .where(eq(repairs.id, repair.id))
      .run()
    settle(tx, repair.id, doing.at)
    return { subject: { kind: 'repair', id: repair.id }, result: { id: repair.id } }
  },
)

/** Takes a clock that was ready back to the bench, as when it stops before it is collected; the reason is on record. */
export const backToBench = verb(
  'bench.backToBench',
  (tx, input: { repairId: number; reason: string }, doing) => {
    const repair = repairOpenTo(tx, input.repairId, 'back-to-bench')
    tx.update(repairs)
      .set({ readyAt: null, readyReason: '', toldAt: null })
      .where(eq(repairs.id, repair.id))
      .run()
    settle(tx, repair.id, doing.at)
    return { subject: { kind: 'repair', id: repair.id }, result: { id: repair.id } }
  },
)
