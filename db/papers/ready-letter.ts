import type { ReadyLetterContents } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { readSettings } from '../rows/settings.ts'
import { waitingClock } from './waiting.ts'

/** The letter that says the clock of a repair may be fetched; refuses one that is not ready. */
export const readyLetterContents = (read: Read, repairId: number, at: string): ReadyLetterContents => ({
  ...waitingClock(read, repairId, at).said,
  kind: 'ready-letter',
  week: readSettings(read).hours.week,
})
