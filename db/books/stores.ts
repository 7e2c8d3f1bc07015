import { eq } from 'drizzle-orm'
import { gather } from '../../core/checked.ts'
import { minor } from '../../core/money/minor.ts'
import type { PartSize } from '../../core/stores/part-size.ts'
import type { PartKind, SpringEnd } from '../../core/vocabulary/work.ts'
import type { Write } from '../file/ledger.ts'
import { known, refuse } from '../rows/refusal.ts'
import { refuseStale, refuseUnseen } from '../rows/seen.ts'
import { readSettings } from '../rows/settings.ts'
import { moveStock, type PartRow, partRow } from '../rows/stock.ts'
import { type VendorEntry, vendorIdFor, vendorNamed } from '../rows/vendor.ts'
import { type Doing, verb } from '../rows/verb.ts'
import { accepted, amountIn } from '../rules/checked-in.ts'
import { repairInShop } from '../rules/facts.ts'
import { refuseBackwards } from '../rules/moments.ts'
import { partOrders, parts, vendors } from '../schema/index.ts'

/** Enters someone the shop buys from or sends work to. */
export const addVendor = verb('stores.addVendor', (tx, input: { name: string; contact: string }) => {
  if (vendorNamed(tx, input.name)) refuse('vendor.nameTaken', 'name', { name: input.name })
  const { id } = tx.insert(vendors).values(input).returning().get()
  return { subject: { kind: 'vendor', id }, result: { id } }
})

interface VendorDescribed {
  readonly name: string
  readonly contact: string
}

/** Changes what is on record of a vendor. */
export const changeVendor = verb(
  'stores.changeVendor',
  (tx, input: VendorDescribed & { vendorId: number; seen: VendorDescribed | null }) => {
    const { vendorId, seen, ...change } = input
    const row = known(
      tx.select().from(vendors).where(eq(vendors.id, vendorId)).get(),
      'vendor.unknown',
      'vendorId',
    )
    refuseUnseen(seen, row)
    const same = vendorNamed(tx, input.name)
    if (same && same.id !== vendorId) refuse('vendor.nameTaken', 'name', { name: input.name })
    tx.update(vendors).set(change).where(eq(vendors.id, vendorId)).run()
    return { subject: { kind: 'vendor', id: vendorId }, result: { id: vendorId } }
  },
)

/** A part as it is described. */
export interface PartEntry extends VendorEntry {
  readonly kind: PartKind
  readonly name: string
  readonly sizes: readonly PartSize[]
  /** Of a mainspring; '' where it is not known. */
  readonly ends: SpringEnd | ''
  readonly keptAt: string
  /** In major units. */
  readonly unitCost: string
  readonly unitPrice: string
  readonly reorderAt: number
}

function partValues(tx: Write, input: PartEntry) {
  const settings = readSettings(tx)
  const money = accepted(
    gather({
      cost: amountIn(settings, input.unitCost, 'unitCost'),
      price: amountIn(settings, input.unitPrice, 'unitPrice'),
    }),
  )
  const twice = input.sizes.findIndex(
    (size, i) => input.sizes.findIndex(other => other.dimension === size.dimension) !== i,
  )
  if (twice >= 0) refuse('size.twice', `sizes[${twice}].dimension`)
  return {
    kind: input.kind,
    name: input.name,
    sizes: [...input.sizes],
    ends: input.kind === 'mainspring' ? input.ends : ('' as const),
    vendorId: vendorIdFor(tx, input),
    keptAt: input.keptAt,
    unitCostMinor: money.cost ?? minor(0),
    unitPriceMinor: money.price ?? minor(0),
    reorderAt: input.reorderAt,
  }
}

/** Enters a part; its stock begins at nothing and comes by receiving or counting. */
export const addPart = verb('stores.addPart', (tx, input: PartEntry) => {
  const { id } = tx.insert(parts).values(partValues(tx, input)).returning().get()
  return { subject: { kind: 'part', id }, result: { id } }
})

/** Changes what is on record of a part; what was used of it before keeps its price. */
export const changePart = verb(
  'stores.changePart',
  (tx, input: PartEntry & { partId: number; active: boolean; seen: string | null }) => {
    const { inStock: _, ...described } = partRow(tx, input.partId)
    const { id } = described
    refuseStale(tx, input.seen, described, ['stores.changePart', 'stores.receive', 'stores.arrive'])
    tx.update(parts)
      .set({ ...partValues(tx, input), active: input.active })
      .where(eq(parts.id, id))
      .run()
    return { subject: { kind: 'part', id }, result: { id } }
  },
)

interface Arrived {
  readonly part: PartRow
  readonly quantity: number
  /** In major units; null for the cost on record. */
  readonly unitCost: string | null
  readonly note: string
}

/** Takes parts into stock; a new cost becomes the part's own. */
function takeIntoStock(tx: Write, { part, quantity, unitCost, note }: Arrived, doing: Doing) {
  const unitCostMinor = accepted(amountIn(readSettings(tx), unitCost, 'unitCost')) ?? part.unitCostMinor
  tx.update(parts).set({ unitCostMinor }).where(eq(parts.id, part.id)).run()
  moveStock(tx, {
    partId: part.id,
    at: doing.at,
    personId: doing.personId,
    kind: 'received',
    quantity,
    unitCostMinor,
    unitPriceMinor: part.unitPriceMinor,
    note,
  })
  return { id: part.id, inStock: part.inStock + quantity }
}

/** Receives parts that were not on order. */
export const receiveParts = verb(
  'stores.receive',
  (tx, input: { partId: number; quantity: number; unitCost: string | null; note: string }, doing) => {
    const part = partRow(tx, input.partId)
    const result = takeIntoStock(tx, { ...input, part }, doing)
    return { subject: { kind: 'part', id: part.id }, result }
  },
)

/** Sets the stock to what was counted, by a move that says why. */
export const countPart = verb(
  'stores.count',
  (tx, input: { partId: number; counted: number; note: string }, doing) => {
    const part = partRow(tx, input.partId)
    const quantity = input.counted - part.inStock
    if (quantity === 0) refuse('part.countUnchanged', 'counted')
    moveStock(tx, {
      partId: part.id,
      at: doing.at,
      personId: doing.personId,
      kind: 'counted',
      quantity,
      unitCostMinor: part.unitCostMinor,
      unitPriceMinor: part.unitPriceMinor,
      note: input.note,
    })
    return {
      subject: { kind: 'part', id: part.id },
      result: { id: part.id, inStock: input.counted, difference: quantity },
    }
  },
)

/** Parts asked of a vendor, for stock or for one repair. */
export interface OrderParts extends VendorEntry {
  readonly partId: number
  readonly repairId: number | null
  readonly quantity: number
  readonly dueOn: string | null
}

/** Orders parts from the vendor named, or from the part's own. */
export const orderParts = verb('stores.order', (tx, input: OrderParts, doing) => {
  const part = partRow(tx, input.partId)
  if (input.repairId !== null) repairInShop(tx, input.repairId)
  const { quantity, dueOn, repairId } = input
  const { id } = tx
    .insert(partOrders)
    .values({
      partId: part.id,
      vendorId: vendorIdFor(tx, input) ?? part.vendorId,
      repairId,
      quantity,
      dueOn,
      orderedAt: doing.at,
    })
    .returning()
    .get()
  return { subject: { kind: 'part', id: part.id }, result: { id } }
})

/** Takes an order in: what came, which may differ from what was asked, goes into stock. */
export const arriveOrder = verb(
  'stores.arrive',
  (tx, input: { orderId: number; quantity: number | null; unitCost: string | null; note: string }, doing) => {
    const row = known(
      tx.select().from(partOrders).where(eq(partOrders.id, input.orderId)).get(),
      'order.unknown',
      'orderId',
    )
    if (row.arrivedAt) refuse('order.arrived', 'orderId')
    refuseBackwards(row.orderedAt, doing.at)
    tx.update(partOrders).set({ arrivedAt: doing.at }).where(eq(partOrders.id, row.id)).run()
    const part = partRow(tx, row.partId)
    const { unitCost, note } = input
    const arrived = { part, quantity: input.quantity ?? row.quantity, unitCost, note }
    const { inStock } = takeIntoStock(tx, arrived, doing)
    return { subject: { kind: 'part', id: part.id }, result: { id: row.id, partId: part.id, inStock } }
  },
)
