import { asc, eq } from 'drizzle-orm'
import type { Read } from '../file/ledger.ts'
import { belongings } from '../schema/index.ts'

/** Everything that came with the clock of a repair, in the order it was written down. */
export const belongingsOf = (read: Read, repairId: number) =>
  read.select().from(belongings).where(eq(belongings.repairId, repairId)).orderBy(asc(belongings.id)).all()
