import { sql } from 'drizzle-orm'
import type { Read } from '../file/ledger.ts'
import { waits } from '../schema/index.ts'
import { question } from './question.ts'

const ordersOf = sql`SELECT 1 FROM part_orders o WHERE o.repair_id = waits.repair_id`

const waitsAnswered = question(read =>
  read
    .select({ repairId: waits.repairId })
    .from(waits)
    .where(
      sql`waits.until_at IS NULL AND waits.reason = 'parts'
        AND EXISTS (${ordersOf} AND o.arrived_at >= waits.from_at)
        AND NOT EXISTS (${ordersOf} AND o.arrived_at IS NULL)`,
    ),
)

/** The repairs that still stand as waiting for parts though everything ordered for them has arrived. */
export const repairsWithPartsIn = (read: Read): ReadonlySet<number> =>
  new Set(
    waitsAnswered(read)
      .all()
      .map(({ repairId }) => repairId),
  )
