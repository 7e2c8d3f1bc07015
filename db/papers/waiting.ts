import { civilDateOf } from '../../core/calendar/zone.ts'
import { minor } from '../../core/money/minor.ts'
import { isInShop, isToCollect } from '../../core/standing/stages.ts'
import type { Read } from '../file/ledger.ts'
import { counterView } from '../read/counter.ts'
import { refuse } from '../rows/refusal.ts'
import { belongingsOf } from './belongings.ts'
import { paperBelonging, repairAndTop } from './top.ts'

/** What letters say of a clock that waits for its owner; refuses one that is not ready to be collected, or has been. */
export function waitingClock(read: Read, repairId: number, at: string) {
  const { repair, top, timeZone } = repairAndTop(read, repairId, at)
  if (!isInShop(repair.stage)) refuse('standing.collected', 'repairId')
  if (!isToCollect(repair.stage)) refuse('standing.notReady', 'repairId')
  const line = counterView(read, at).rows.find(row => row.id === repair.id)
  return {
    repair,
    timeZone,
    said: {
      ...top,
      readyOn: civilDateOf(repair.stageSince, timeZone),
      unrepaired: repair.stage === 'declined',
      toPay: line?.toPayMinor ?? minor(0),
      belongings: belongingsOf(read, repair.id)
        .filter(({ custody, returnedAt }) => custody === 'received' && returnedAt === null)
        .map(paperBelonging),
    },
  }
}
