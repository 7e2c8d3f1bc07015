import { Hono } from 'hono'
import { z } from 'zod'
import { phoneReading, phoneText } from '../../../core/owner/contact.ts'
import { found } from '../../../db/read/find.ts'
import { ownersLike } from '../../../db/read/likely.ts'
import { readSettings } from '../../../db/rows/settings.ts'
import { likelyClocks } from '../../../db/rules/likely.ts'
import { query } from './body.ts'
import { oneOf } from './fields.ts'
import type { Env } from './perform.ts'

const typed = z.string().max(200)

const asked = z.object({
  q: typed,
  kind: oneOf(['owner', 'clock', 'repair', 'paper']).optional(),
})

/**
 * Finding anything: `?q=` what was typed so far, `&kind=` of one kind only. `/owners` and `/clocks` find those on record that a new
 * one, as typed so far, may be. `/phone` says what a phone as written is read as.
 */
export const find = new Hono<Env>()
  .get('/', query(asked), c => {
    const { q, kind } = c.req.valid('query')
    return c.json({ results: found(c.var.ledger.read, q, kind ?? null) })
  })
  .get('/owners', query(z.object({ name: typed, phone: typed, email: typed })), c =>
    c.json({ likely: ownersLike(c.var.ledger.read, c.req.valid('query')) }),
  )
  .get('/phone', query(z.object({ text: typed })), c => {
    const { country } = readSettings(c.var.ledger.read).place
    const reading = phoneReading(c.req.valid('query').text, country)
    return c.json({ ...reading, shown: phoneText(reading.kept ?? '') })
  })
  .get('/clocks', query(z.object({ maker: typed, serial: typed })), c =>
    c.json({ likely: likelyClocks(c.var.ledger.read, c.req.valid('query')) }),
  )
