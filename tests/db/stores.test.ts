import { eq, sql } from 'drizzle-orm'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { putBack, takePart } from '../../db/books/parts-used.ts'
import { addPart, arriveOrder, countPart, orderParts, receiveParts } from '../../db/books/stores.ts'
import { partView } from '../../db/read/stores.ts'
import { Refusal } from '../../db/rows/refusal.ts'
import { partRow } from '../../db/rows/stock.ts'
import { partsUsedOn } from '../../db/rules/parts-used.ts'
import { stockMoves } from '../../db/schema/index.ts'
import { workLedger } from './work-ledger.ts'

let shop: ReturnType<typeof workLedger>
beforeAll(() => {
  shop = workLedger()
})
afterAll(() => shop.close())

const at = '2027-03-02T09:00:00.000Z'
const newPart = () =>
  addPart(shop.ledger, shop.doing(at), {
    kind: 'line',
    name: 'Gut line',
    sizes: [],
    ends: '',
    vendorId: null,
    vendor: '',
    keptAt: '',
    unitCost: '1.10',
    unitPrice: '3.00',
    reorderAt: 0,
  }).id

type Act = { readonly kind: 'receive' | 'use' | 'count' | 'order' | 'back'; readonly n: number }
const act: fc.Arbitrary<Act> = fc.record({
  kind: fc.constantFrom('receive', 'use', 'count', 'order', 'back'),
  n: fc.integer({ min: 1, max: 9 }),
})

/** Performs one act; what the shop's rules refuse changes nothing. */
function perform(partId: number, { kind, n }: Act): void {
  const { ledger, repairId } = shop
  const doing = shop.doing(at)
  const entry = { partId, quantity: n, unitCost: null, note: '' }
  if (kind === 'receive') receiveParts(ledger, doing, entry)
  if (kind === 'use') takePart(ledger, doing, { repairId, partId, quantity: n, atShopsCost: false })
  if (kind === 'count') countPart(ledger, doing, { partId, counted: n - 1, note: 'counted' })
  if (kind === 'order') {
    const order = { partId, repairId: null, vendorId: null, vendor: '', quantity: n, dueOn: null }
    const { id } = orderParts(ledger, doing, order)
    arriveOrder(ledger, doing, { orderId: id, quantity: null, unitCost: null, note: '' })
  }
  const uses = partsUsedOn(ledger.read, repairId).rows.filter(row => row.part.id === partId)
  const last = uses.at(-1)
  if (kind === 'back' && last) putBack(ledger, doing, { moveId: last.id, quantity: n, reason: '' })
}

const isAllowed = (act: () => void): boolean => {
  try {
    act()
    return true
  } catch (error) {
    if (error instanceof Refusal) return false
    throw error
  }
}

describe('stock', () => {
  it('is always the sum of its moves, never below nothing, and what is missing is on repairs', () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 25 }), acts => {
        const partId = newPart()
        for (const one of acts) {
          const before = partRow(shop.ledger.read, partId).inStock
          const allowed = isAllowed(() => perform(partId, one))
          const { inStock } = partRow(shop.ledger.read, partId)
          expect(inStock).toBeGreaterThanOrEqual(0)
          if (!allowed) expect(inStock).toBe(before)
        }
        const moves = shop.ledger.read.select().from(stockMoves).where(eq(stockMoves.partId, partId)).all()
        const { inStock } = partRow(shop.ledger.read, partId)
        expect(moves.reduce((sum, move) => sum + move.quantity, 0)).toBe(inStock)
        const onRepair = partsUsedOn(shop.ledger.read, shop.repairId).rows.filter(r => r.part.id === partId)
        const gone = moves.filter(m => m.repairId !== null).reduce((sum, m) => sum - m.quantity, 0)
        expect(onRepair.reduce((sum, row) => sum + row.quantity, 0)).toBe(gone)
        const history = partView(shop.ledger.read, partId).moves
        expect(history[0]?.after ?? 0).toBe(inStock)
        expect(history.at(-1)?.after ?? 0).toBe(history.at(-1)?.quantity ?? 0)
      }),
      { numRuns: 15 },
    )
  }, 30_000)

  it('is kept by moves that nothing can change or delete', () => {
    const partId = newPart()
    perform(partId, { kind: 'receive', n: 3 })
    const change = () =>
      shop.ledger.write(tx => tx.run(sql`UPDATE stock_moves SET quantity = 9 WHERE part_id = ${partId}`))
    const shorten = () =>
      shop.ledger.write(tx => tx.run(sql`DELETE FROM stock_moves WHERE part_id = ${partId}`))
    expect(change).toThrow()
    expect(shorten).toThrow()
    expect(partRow(shop.ledger.read, partId).inStock).toBe(3)
  })
})
