import { eq } from 'drizzle-orm'
import type { Read } from '../file/ledger.ts'
import { people } from '../schema/index.ts'

/** True when the number is that of a person in the ledger. */
export const isPerson = (read: Read, id: number): boolean =>
  read.select({ id: people.id }).from(people).where(eq(people.id, id)).get() !== undefined
