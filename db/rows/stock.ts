import { eq, sql } from 'drizzle-orm'
import type { Read, Write } from '../file/ledger.ts'
import { parts, stockMoves } from '../schema/index.ts'
import { known } from './refusal.ts'

export type PartRow = typeof parts.$inferSelect
export type MoveRow = typeof stockMoves.$inferSelect

/** The part, or a refusal. */
export const partRow = (read: Read, id: number): PartRow =>
  known(read.select().from(parts).where(eq(parts.id, id)).get(), 'part.unknown', 'partId')

/** Adds a move to the stock book and keeps the part's stock at the sum of its moves. `quantity` is signed. */
export function moveStock(tx: Write, move: Omit<typeof stockMoves.$inferInsert, 'id'>): MoveRow {
  const row = tx.insert(stockMoves).values(move).returning().get()
  tx.update(parts)
    .set({ inStock: sql`${parts.inStock} + ${move.quantity}` })
    .where(eq(parts.id, move.partId))
    .run()
  return row
}

/** How many of a use are still on the repair. */
export function leftOfUse(read: Read, use: { id: number; quantity: number }): number {
  const back = read
    .select({ sum: sql<number>`ifnull(sum(${stockMoves.quantity}), 0)` })
    .from(stockMoves)
    .where(eq(stockMoves.undoesId, use.id))
    .get()
  return -use.quantity - (back?.sum ?? 0)
}
