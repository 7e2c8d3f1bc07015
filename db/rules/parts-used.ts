import { asc, eq } from 'drizzle-orm'
import { minor } from '../../core/money/minor.ts'
import type { Read } from '../file/ledger.ts'
import { askedId, question } from '../rows/question.ts'
import { leftOfUse } from '../rows/stock.ts'
import * as s from '../schema/index.ts'

const moves = question(read =>
  read
    .select({ move: s.stockMoves, part: { id: s.parts.id, name: s.parts.name, kind: s.parts.kind } })
    .from(s.stockMoves)
    .innerJoin(s.parts, eq(s.parts.id, s.stockMoves.partId))
    .where(eq(s.stockMoves.repairId, askedId))
    .orderBy(asc(s.stockMoves.id)),
)

/** Parts on a repair: each use with what is still there of it, at the price frozen then. */
export function partsUsedOn(read: Read, repairId: number) {
  const rows = moves(read)
    .all({ id: repairId })
    .filter(({ move }) => move.kind === 'used')
    .map(({ move, part }) => {
      const quantity = leftOfUse(read, move)
      return {
        id: move.id,
        at: move.at,
        part,
        taken: -move.quantity,
        quantity,
        unitPriceMinor: move.unitPriceMinor,
        priceMinor: minor(move.unitPriceMinor * quantity),
        costMinor: minor(move.unitCostMinor * quantity),
      }
    })
  return { rows, priceMinor: minor(rows.reduce((sum, row) => sum + row.priceMinor, 0)) }
}
