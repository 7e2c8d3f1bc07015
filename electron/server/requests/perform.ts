import type { Context } from 'hono'
import type { Ledger } from '../../../db/file/ledger.ts'
import type { Doing, Verb } from '../../../db/rows/verb.ts'

/** What every request is given: the open ledger, the time, and who is acting. */
export interface Env {
  Variables: { ledger: Ledger; doing: Doing }
}

/** Performs an act and answers with what came of it. */
export const perform = <Input, Result>(c: Context<Env>, act: Verb<Input, Result>, input: Input) =>
  c.json(act(c.var.ledger, c.var.doing, input))
