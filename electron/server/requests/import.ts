import { Hono } from 'hono'
import { z } from 'zod'
import { importRegister } from '../../../db/books/import.ts'
import { importStandings } from '../../../db/read/import.ts'
import { inputProblems, withMessages } from '../problems.ts'
import { body } from './body.ts'
import { count, id, list } from './fields.ts'
import { type Env, perform } from './perform.ts'
import { clockFields, ownerFields } from './register.ts'

const mostRows = 100_000
/** As many lines as are checked at once, so that a long list shows how far it is and can be stopped. */
const mostChecked = 2000

const row = z.strictObject({
  line: count(1, 10_000_000),
  sameAs: id.nullable().default(null),
  owner: z.strictObject(ownerFields),
  clock: z.strictObject(clockFields).nullable().default(null),
})

/** A line as it is checked: told by its number, whatever else is wrong with it. */
const looked = z.looseObject({ line: count(1, 10_000_000) })

/** An existing shop's list: how its lines stand to what is on record, and entering them, all or none. */
export const registerImport = new Hono<Env>()
  .post('/importCheck', body(z.strictObject({ rows: list(looked, mostChecked, 1) })), c => {
    const read = c.req.valid('json').rows.map(one => ({ line: one.line, one, checked: row.safeParse(one) }))
    const good = read.flatMap(({ checked }) => (checked.success ? [checked.data] : []))
    const standings = importStandings(c.var.ledger.read, good)
    const unread = read.flatMap(({ line, one, checked }) =>
      checked.success ? [] : [{ line, problems: inputProblems(checked.error, one), ...nothingKnown }],
    )
    const lines = [...standings, ...unread].toSorted((a, b) => a.line - b.line)
    return c.json({ lines: lines.map(one => ({ ...one, problems: withMessages(one.problems) })) })
  })
  .post('/import', body(z.strictObject({ rows: list(row, mostRows, 1) })), async c => {
    if (!c.var.played && !c.var.trial) await c.var.copies.copyBefore()
    return perform(c, importRegister, c.req.valid('json'))
  })

const nothingKnown = { ownerKnown: false, clockKnown: false, likely: [] }
