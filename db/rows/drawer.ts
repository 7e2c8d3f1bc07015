import { and, desc, eq, gt, sql } from 'drizzle-orm'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { Read } from '../file/ledger.ts'
import { drawerCounts, payments } from '../schema/index.ts'

/** What should lie in the drawer by the entries, and the last payment they reach to. */
export interface DrawerExpected {
  readonly expectedMinor: Minor
  readonly lastPaymentId: number
}

const lastCount = (read: Read) =>
  read.select().from(drawerCounts).orderBy(desc(drawerCounts.id)).limit(1).get()

/** The cash left by the last count, and what was entered since; before the first count everything entered. */
export function drawerExpected(read: Read): DrawerExpected {
  const last = lastCount(read)
  const since = read
    .select({
      cash: sql<number>`ifnull(sum(${payments.amountMinor}) FILTER (WHERE ${eq(payments.method, 'cash')}), 0)`,
      last: sql<number>`ifnull(max(${payments.id}), 0)`,
    })
    .from(payments)
    .where(and(gt(payments.id, last?.lastPaymentId ?? 0)))
    .get()
  return {
    expectedMinor: minor((last ? last.countedMinor - last.takenMinor : 0) + (since?.cash ?? 0)),
    lastPaymentId: Math.max(since?.last ?? 0, last?.lastPaymentId ?? 0),
  }
}
