import { zValidator } from '@hono/zod-validator'
import { Hono } from 'hono'
import { z } from 'zod'
import { draftOf, draftsOf, dropDraft, keepDraft } from '../../../db/rows/drafts.ts'
import { known } from '../../../db/rows/refusal.ts'
import { refuseInput } from '../problems.ts'
import { body, query } from './body.ts'
import { optional, saying } from './fields.ts'
import type { Env } from './perform.ts'

const key = z.string().regex(/^[A-Za-z0-9-]{8,64}$/)
const page = z.string().regex(/^[a-z][a-z-]{0,40}$/)
const named = zValidator('param', z.object({ key }), refuseInput)
/** A form's entries are lists of objects of lists at most; SQLite reads JSON down to a thousand levels. */
const mostLevels = 50

/** Whether lists and objects stand in one another no deeper than that; counted without recursion, as it may be very deep. */
function isShallow(value: unknown): boolean {
  let level = [value]
  for (let depth = 0; level.length > 0; depth += 1) {
    if (depth > mostLevels) return false
    level = level.flatMap(one => (typeof one === 'object' && one !== null ? Object.values(one) : []))
  }
  return true
}

const typed = z.record(z.string(), z.unknown()).refine(isShallow, saying('input.tooDeep'))
const draft = z.strictObject({ page, title: optional(), body: typed })

/** What is being typed and not yet entered; kept so that nothing is lost when the window closes or the computer stops. */
export const drafts = new Hono<Env>()
  .get('/', query(z.object({ page })), c =>
    c.json({ drafts: draftsOf(c.var.ledger.read, c.req.valid('query').page) }),
  )
  .get('/:key', named, c =>
    c.json(known(draftOf(c.var.ledger.read, c.req.valid('param').key), 'draft.unknown', 'key')),
  )
  .put('/:key', named, body(draft), c => {
    const draft = { key: c.req.valid('param').key, ...c.req.valid('json') }
    return c.json({ kept: keepDraft(c.var.ledger, draft, c.var.doing.at) })
  })
  .put('/:key/drop', named, c => {
    c.var.ledger.write(tx => dropDraft(tx, c.req.valid('param').key))
    return c.json({ kept: false })
  })
