import type { Context } from 'hono'
import { confirmClock } from '../../../db/books/shop.ts'
import type { Ledger } from '../../../db/file/ledger.ts'
import { isKeyUsed } from '../../../db/rows/day-book.ts'
import type { Doing, Verb } from '../../../db/rows/verb.ts'
import { refuseDoubtedClock } from '../../../db/rules/clock-doubt.ts'
import type { CopyKeeper } from '../../copies/keeper.ts'

/** What every request is given: the open ledger, the time, and who is acting. */
export interface Env {
  Variables: { ledger: Ledger; doing: Doing; trial: boolean; played: boolean; copies: CopyKeeper }
}

/** Refuses an act while the computer's clock is in doubt; an act of a day file has its time from there. */
export function refuseByClock({ ledger, doing, played }: Env['Variables']): void {
  if (!played) refuseDoubtedClock(ledger.read, doing.at)
}

/**
 * Performs an act and answers with what came of it. What was done before under the same key is answered again, whatever the computer's
 * clock shows since; of a trial the header Countwheel-Done then says that the act stands.
 */
export function perform<Input, Result>(c: Context<Env>, act: Verb<Input, Result>, input: Input) {
  const { ledger, doing, trial } = c.var
  const before = isKeyUsed(ledger.read, doing.key)
  if (!before && act.act !== confirmClock.act) refuseByClock(c.var)
  const result = act(ledger, doing, input)
  if (before && trial) c.header('Countwheel-Done', '1')
  return c.json(result)
}
