import { eq } from 'drizzle-orm'
import type { PhotographMoment } from '../../core/vocabulary/intake.ts'
import type { Read, Write } from '../file/ledger.ts'
import { known } from '../rows/refusal.ts'
import { photographs, photographUses } from '../schema/index.ts'

/** The row of a photograph by its hash, if it is on record. */
export const photographRow = (read: Read, hash: string) =>
  read.select().from(photographs).where(eq(photographs.hash, hash)).get()

/** What a photograph shows: a repair, or one condition note of it. */
export interface Attach {
  readonly hash: string
  readonly repairId: number
  readonly noteId: number | null
  readonly moment: PhotographMoment
  readonly remark: string
}

/** Puts a kept photograph beside a repair; used by every verb that records one. `field` is where the request names the hash. */
export function attachOne(tx: Write, input: Attach, at: string, field = 'hash'): number {
  known(photographRow(tx, input.hash), 'photograph.unknown', field)
  return tx
    .insert(photographUses)
    .values({ ...input, addedAt: at })
    .returning()
    .get().id
}
