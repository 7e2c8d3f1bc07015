import { eq } from 'drizzle-orm'
import { minor } from '../../core/money/minor.ts'
import { known, refuse } from '../rows/refusal.ts'
import { leftOfUse, moveStock, partRow } from '../rows/stock.ts'
import { verb } from '../rows/verb.ts'
import { refuseUseBeyondLimit } from '../rules/beyond-limit.ts'
import { repairInShop, repairOpenTo } from '../rules/facts.ts'
import { stockMoves } from '../schema/index.ts'

/** A part used at the bench. */
export interface PartUse {
  readonly repairId: number
  readonly partId: number
  readonly quantity: number
  /** The owner pays nothing for it: it goes on no bill above what is agreed. */
  readonly atShopsCost: boolean
}

/**
 * Takes parts from stock for a repair; what they cost and are sold for is frozen as it is now. Refused where the bill would pass
 * what the owner agreed to, unless the shop bears it.
 */
export const takePart = verb('bench.usePart', (tx, input: PartUse, doing) => {
  const repair = repairOpenTo(tx, input.repairId, 'work')
  const part = partRow(tx, input.partId)
  if (part.inStock < input.quantity) refuse('part.notEnough', 'quantity', { inStock: part.inStock })
  const move = moveStock(tx, {
    partId: part.id,
    at: doing.at,
    personId: doing.personId,
    kind: 'used',
    quantity: -input.quantity,
    repairId: repair.id,
    unitCostMinor: part.unitCostMinor,
    unitPriceMinor: input.atShopsCost ? minor(0) : part.unitPriceMinor,
  })
  if (!input.atShopsCost) refuseUseBeyondLimit(tx, repair, part)
  return {
    subject: { kind: 'repair', id: repair.id },
    result: { id: move.id, unitPriceMinor: move.unitPriceMinor, inStock: part.inStock - input.quantity },
  }
})

/** Puts parts of one use back into stock, at the price they were taken for. */
export const putBack = verb(
  'bench.putBack',
  (tx, input: { moveId: number; quantity: number; reason: string }, doing) => {
    const use = known(
      tx.select().from(stockMoves).where(eq(stockMoves.id, input.moveId)).get(),
      'move.unknown',
      'moveId',
    )
    if (use.kind !== 'used' || use.repairId === null) refuse('move.notAUse', 'moveId')
    const repair = repairInShop(tx, use.repairId)
    const left = leftOfUse(tx, use)
    if (input.quantity > left) refuse('part.notUsed', 'quantity', { used: left })
    const { partId, unitCostMinor, unitPriceMinor } = use
    const move = moveStock(tx, {
      partId,
      at: doing.at,
      personId: doing.personId,
      kind: 'put-back',
      quantity: input.quantity,
      repairId: repair.id,
      unitCostMinor,
      unitPriceMinor,
      undoesId: use.id,
      note: input.reason,
    })
    return {
      subject: { kind: 'repair', id: repair.id },
      result: { id: move.id, inStock: partRow(tx, partId).inStock },
    }
  },
)
