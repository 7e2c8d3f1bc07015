import { daysBetween } from '../../core/calendar/civil.ts'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { UncollectedLetterContents } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { waitingClock } from './waiting.ts'

/** The reminder that the clock of a repair still stands in the shop; refuses one that is not ready. */
export function uncollectedLetterContents(
  read: Read,
  repairId: number,
  at: string,
): UncollectedLetterContents {
  const { repair, timeZone, said } = waitingClock(read, repairId, at)
  return {
    ...said,
    kind: 'uncollected-letter',
    days: daysBetween(said.readyOn, said.issuedOn),
    ...(repair.toldAt ? { toldOn: civilDateOf(repair.toldAt, timeZone) } : {}),
  }
}
