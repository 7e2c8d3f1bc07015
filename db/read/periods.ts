import { desc, eq } from 'drizzle-orm'
import type { Read } from '../file/ledger.ts'
import { closedTo } from '../rules/book-day.ts'
import { closedPeriods, people } from '../schema/index.ts'

/** To which day the books are closed (null while they are not), and every closing, the last first. */
export const periodsView = (read: Read, today: string) => ({
  closedTo: closedTo(read, today),
  rows: read
    .select({
      id: closedPeriods.id,
      at: closedPeriods.at,
      toDate: closedPeriods.toDate,
      person: people.name,
    })
    .from(closedPeriods)
    .leftJoin(people, eq(people.id, closedPeriods.personId))
    .orderBy(desc(closedPeriods.id))
    .all(),
})
