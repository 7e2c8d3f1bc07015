import { isDeepStrictEqual } from 'node:util'
import { asc, eq, gt, sql } from 'drizzle-orm'
import type { Read } from '../file/ledger.ts'
import { byId } from '../rows/by-id.ts'
import { repairBalance } from '../rules/balance.ts'
import { standingOf } from '../rules/facts.ts'
import { settledKept, settledOf } from '../rules/settled-taxes.ts'
import { parts, repairs, stockMoves } from '../schema/index.ts'
import { type Check, type Fault, fault } from './check.ts'

const allRepairs = (read: Read) =>
  byId((after, limit) =>
    read.select().from(repairs).where(gt(repairs.id, after)).orderBy(asc(repairs.id)).limit(limit).all(),
  )

function* stockFaults(read: Read): Generator<Fault, number> {
  const rows = read
    .select({
      name: parts.name,
      kept: parts.inStock,
      moved: sql<number>`ifnull(sum(${stockMoves.quantity}), 0)`,
    })
    .from(parts)
    .leftJoin(stockMoves, eq(stockMoves.partId, parts.id))
    .groupBy(parts.id)
    .all()
  for (const { name, kept, moved } of rows)
    if (kept !== moved) yield fault('derived.stock', { name, kept, moved })
  return rows.length
}

/** What is kept beside the facts for lists to ask for: where each repair stands, what is due on it, what tax is settled on it, what is in stock. */
export const derived: Check = function* ({ read }) {
  let looked = 0
  for (const repair of allRepairs(read)) {
    const { number, stage: kept } = repair
    const { stage } = standingOf(read, repair)
    if (kept !== stage) yield fault('derived.stage', { number, kept, stage })
    const { due } = repairBalance(read, repair.id)
    if (repair.dueMinor !== due) yield fault('derived.due', { number, kept: repair.dueMinor, due })
    if (!isDeepStrictEqual(settledKept(read, repair.id), settledOf(read, repair.id)))
      yield fault('derived.settledTax', { number })
    looked += 1
  }
  return looked + (yield* stockFaults(read))
}
