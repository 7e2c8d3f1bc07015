import { eq } from 'drizzle-orm'
import { minor } from '../../core/money/minor.ts'
import type { Read } from '../file/ledger.ts'
import { drawerExpected } from '../rows/drawer.ts'
import { drawerCounts, people } from '../schema/index.ts'
import { type Turn, turned } from './turn.ts'

/** What should lie in the drawer now, and its counts, the newest first, a page at a time. */
export function drawerView(read: Read, turn: Turn) {
  const { rows, ...more } = turned(drawerCounts.id, turn, undefined, ({ where, orderBy, limit }) =>
    read
      .select({
        id: drawerCounts.id,
        onDate: drawerCounts.onDate,
        person: people.name,
        expectedMinor: drawerCounts.expectedMinor,
        countedMinor: drawerCounts.countedMinor,
        takenMinor: drawerCounts.takenMinor,
        remark: drawerCounts.remark,
      })
      .from(drawerCounts)
      .leftJoin(people, eq(people.id, drawerCounts.personId))
      .where(where)
      .orderBy(orderBy)
      .limit(limit)
      .all(),
  )
  return {
    ...more,
    expectedMinor: drawerExpected(read).expectedMinor,
    rows: rows.map(row => ({ ...row, differenceMinor: minor(row.countedMinor - row.expectedMinor) })),
  }
}
