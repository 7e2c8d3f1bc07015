import type { Context } from 'hono'
import { confirmClock } from '../../../db/books/shop.ts'
import type { Ledger } from '../../../db/file/ledger.ts'
import type { Doing, Verb } from '../../../db/rows/verb.ts'
import { refuseDoubtedClock } from '../../../db/rules/clock-doubt.ts'

/** What every request is given: the open ledger, the time, and who is acting. */
export interface Env {
  Variables: { ledger: Ledger; doing: Doing; played: boolean }
}

/** Refuses an act while the computer's clock is in doubt; an act of a day file has its time from there. */
export function refuseByClock({ ledger, doing, played }: Env['Variables']): void {
  if (!played) refuseDoubtedClock(ledger.read, doing.at)
}

/** Performs an act and answers with what came of it. */
export function perform<Input, Result>(c: Context<Env>, act: Verb<Input, Result>, input: Input) {
  if (act.act !== confirmClock.act) refuseByClock(c.var)
  return c.json(act(c.var.ledger, c.var.doing, input))
}
