import { desc } from 'drizzle-orm'
import type { Read } from '../file/ledger.ts'
import { clockChecks } from '../schema/index.ts'

/** The last time the computer's clock was compared with a reference. */
export const latestClockCheck = (read: Read) =>
  read.select().from(clockChecks).orderBy(desc(clockChecks.id)).limit(1).get()
