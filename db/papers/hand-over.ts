import { eq } from 'drizzle-orm'
import type { HandOverContents, ReturnedBelonging } from '../../core/papers/working.ts'
import { setUpAdviceFor } from '../../core/vocabulary/set-up-advice.ts'
import type { Read } from '../file/ledger.ts'
import { clockRow } from '../rows/register-rows.ts'
import { repairBalance } from '../rules/balance.ts'
import { documentRow } from '../rules/frozen-papers.ts'
import { warrantyOf } from '../rules/warranty-cover.ts'
import { handOvers } from '../schema/index.ts'
import { belongingsOf } from './belongings.ts'
import { paperBelonging, repairAndTop } from './top.ts'

/** What leaves the shop with the clock of a repair; before the hand-over a form to tick. */
export function handOverContents(read: Read, repairId: number, at: string): HandOverContents {
  const { repair, top } = repairAndTop(read, repairId, at)
  const clock = clockRow(read, repair.clockId)
  return {
    ...top,
    kind: 'hand-over',
    ...handedOver(read, repair.id),
    belongings: belongingsOf(read, repair.id)
      .filter(({ custody }) => custody === 'received')
      .map(returnedBelonging),
    ...repairBalance(read, repair.id),
    advice: repair.readyAt === null ? [] : setUpAdviceFor(clock),
    ...warranty(read, repair.id),
  }
}

const returnedBelonging = (row: ReturnType<typeof belongingsOf>[number]): ReturnedBelonging => ({
  ...paperBelonging(row),
  returned: row.returnedAt !== null,
  ...(row.unreturnedReason ? { reason: row.unreturnedReason } : {}),
})

function handedOver(read: Read, repairId: number): Pick<HandOverContents, 'handedOver'> {
  const row = read.select().from(handOvers).where(eq(handOvers.repairId, repairId)).get()
  if (!row) return {}
  const { at, toName, authority, unpaidReason } = row
  return {
    handedOver: {
      at,
      toName,
      ...(authority ? { authority } : {}),
      ...(unpaidReason ? { unpaidReason } : {}),
    },
  }
}

function warranty(read: Read, repairId: number): Pick<HandOverContents, 'warranty'> {
  const given = warrantyOf(read, repairId)
  if (!given) return {}
  const { scope, startOn, lastDay, documentId } = given
  return { warranty: { scope, startOn, lastDay, number: documentRow(read, documentId).number } }
}
