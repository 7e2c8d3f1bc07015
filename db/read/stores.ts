import { asc, desc, eq, isNull, sql } from 'drizzle-orm'
import { isOverdue } from '../../core/calendar/due.ts'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { minor } from '../../core/money/minor.ts'
import type { Read } from '../file/ledger.ts'
import { stampOf } from '../rows/seen.ts'
import { readSettings } from '../rows/settings.ts'
import { partRow } from '../rows/stock.ts'
import * as s from '../schema/index.ts'

/** Orders that have not arrived, the longest due first. */
export const openOrders = (read: Read, today: string) =>
  read
    .select({
      order: s.partOrders,
      part: { id: s.parts.id, name: s.parts.name, kind: s.parts.kind, unitCostMinor: s.parts.unitCostMinor },
      vendor: s.vendors.name,
      repairNumber: s.repairs.number,
    })
    .from(s.partOrders)
    .innerJoin(s.parts, eq(s.parts.id, s.partOrders.partId))
    .leftJoin(s.vendors, eq(s.vendors.id, s.partOrders.vendorId))
    .leftJoin(s.repairs, eq(s.repairs.id, s.partOrders.repairId))
    .where(isNull(s.partOrders.arrivedAt))
    .orderBy(sql`${s.partOrders.dueOn} IS NULL, ${s.partOrders.dueOn}, ${s.partOrders.id}`)
    .all()
    .map(({ order, part, vendor, repairNumber }) => ({
      ...order,
      part,
      vendor,
      repairNumber,
      overdue: isOverdue(order.dueOn, today),
    }))

type OpenOrders = ReturnType<typeof openOrders>

function partRows(read: Read, orders: OpenOrders) {
  return read
    .select({ part: s.parts, vendor: s.vendors.name })
    .from(s.parts)
    .leftJoin(s.vendors, eq(s.vendors.id, s.parts.vendorId))
    .orderBy(asc(s.parts.kind), sql`${s.parts.name} COLLATE NOCASE`, asc(s.parts.id))
    .all()
    .map(({ part, vendor }) => {
      const onOrder = orders
        .filter(order => order.partId === part.id)
        .reduce((sum, order) => sum + order.quantity, 0)
      return {
        ...part,
        vendor,
        onOrder,
        valueMinor: minor(part.inStock * part.unitCostMinor),
        toOrder: part.active && part.reorderAt > 0 && part.inStock + onOrder <= part.reorderAt,
      }
    })
}

/** The stores: every part, what must be ordered, what is on order, and what the stock is worth at cost. */
export function storesView(read: Read, at: string) {
  const today = civilDateOf(at, readSettings(read).place.timeZone)
  const orders = openOrders(read, today)
  const parts = partRows(read, orders)
  return {
    today,
    parts,
    orders,
    vendors: read.select().from(s.vendors).orderBy(sql`${s.vendors.name} COLLATE NOCASE`).all(),
    valueMinor: minor(parts.reduce((sum, part) => sum + part.valueMinor, 0)),
    counts: {
      toOrder: parts.filter(part => part.toOrder).length,
      onOrder: orders.length,
      overdue: orders.filter(order => order.overdue).length,
    },
  }
}

/** One part with every move of its stock, the newest first, and the stock after each. */
export function partView(read: Read, id: number) {
  const part = partRow(read, id)
  const moves = read
    .select({ move: s.stockMoves, person: s.people.name, repairNumber: s.repairs.number })
    .from(s.stockMoves)
    .leftJoin(s.people, eq(s.people.id, s.stockMoves.personId))
    .leftJoin(s.repairs, eq(s.repairs.id, s.stockMoves.repairId))
    .where(eq(s.stockMoves.partId, id))
    .orderBy(desc(s.stockMoves.id))
    .all()
  let after = part.inStock
  const { inStock: _, ...described } = part
  return {
    part,
    stamp: stampOf(described),
    moves: moves.map(({ move, person, repairNumber }) => {
      const row = { ...move, person, repairNumber, after }
      after -= move.quantity
      return row
    }),
  }
}
