import { eq } from 'drizzle-orm'
import type { Read } from '../file/ledger.ts'
import { clocks, owners } from '../schema/index.ts'
import { known, refuse } from './refusal.ts'

/** The owner, or a refusal when there is none or it was merged into another. */
export function ownerRow(read: Read, id: number, field = 'ownerId') {
  const owner = known(read.select().from(owners).where(eq(owners.id, id)).get(), 'owner.unknown', field)
  if (owner.mergedIntoId) refuse('owner.merged', field)
  return owner
}

/** The clock, or a refusal. */
export const clockRow = (read: Read, id: number, field = 'clockId') =>
  known(read.select().from(clocks).where(eq(clocks.id, id)).get(), 'clock.unknown', field)
