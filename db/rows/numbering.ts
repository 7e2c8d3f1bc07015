import { eq, sql } from 'drizzle-orm'
import type { Write } from '../file/ledger.ts'
import { series } from '../schema/index.ts'

/** The next number of a series, taken inside the verb's transaction: a verb that fails gives it back, so there are no gaps. */
export function nextNumber(tx: Write, name: string): number {
  tx.insert(series)
    .values({ name, last: 1 })
    .onConflictDoUpdate({ target: series.name, set: { last: sql`${series.last} + 1` } })
    .run()
  const row = tx.select({ last: series.last }).from(series).where(eq(series.name, name)).get()
  return row?.last ?? 1
}

/** Lets a series go on after `last`, as when a shop brings its own numbers along. */
export function startSeriesAfter(tx: Write, name: string, last: number): void {
  tx.insert(series).values({ name, last }).onConflictDoUpdate({ target: series.name, set: { last } }).run()
}
