import { basename, resolve } from 'node:path'
import { zValidator } from '@hono/zod-validator'
import { Hono } from 'hono'
import { z } from 'zod'
import { accountNames } from '../../../core/accounts/names.ts'
import { civilDateOf } from '../../../core/calendar/zone.ts'
import * as vocabulary from '../../../core/vocabulary/clock.ts'
import { scopes } from '../../../core/vocabulary/work.ts'
import { dayBookAreas } from '../../../core/words/day-book-areas.ts'
import { accountView } from '../../../db/read/account-ledger.ts'
import * as accounts from '../../../db/read/accounts.ts'
import { counterView } from '../../../db/read/counter.ts'
import { dayBookActs, dayBookView } from '../../../db/read/day-book.ts'
import { drawerView } from '../../../db/read/drawer.ts'
import { dateForNew, suggestedDate } from '../../../db/read/estimated-date.ts'
import { paymentsView } from '../../../db/read/money.ts'
import { owedView } from '../../../db/read/owed.ts'
import { ownerAccountView } from '../../../db/read/owner-account.ts'
import { periodsView } from '../../../db/read/periods.ts'
import { clockView, ownersView, ownerView } from '../../../db/read/register.ts'
import { repairByNumber, repairView } from '../../../db/read/repair.ts'
import { shopView } from '../../../db/read/shop.ts'
import { drawnPaper } from '../../../db/rows/kept-papers.ts'
import { readSettings } from '../../../db/rows/settings.ts'
import { forgetView } from '../../../db/rules/forget.ts'
import { backupsOf } from '../../copies/backups.ts'
import { shopsFolder } from '../../copies/keeper.ts'
import { copiesOf } from '../../copies/restore.ts'
import { asLiteral } from '../day-references.ts'
import { refuseInput, withMessages } from '../problems.ts'
import { query } from './body.ts'
import { civilDate, keyOf, number, oneOf } from './fields.ts'
import type { Env } from './perform.ts'
import { publicHolidaysView } from './public-holidays.ts'

/** The day it is in the shop. */
const todayOf = ({ ledger, doing }: Env['Variables']) =>
  civilDateOf(doing.at, readSettings(ledger.read).place.timeZone)

const param = <T extends z.ZodRawShape>(shape: T) => zValidator('param', z.object(shape), refuseInput)
const openNumber = number.optional().transform(n => n ?? null)
/** A line's number, or 0 for the place before every line of that name. */
const openWhole = z
  .string()
  .regex(/^\d{1,16}$/)
  .transform(Number)
  .optional()
  .transform(n => n ?? null)
const kinds = ['claim-check', 'estimate', 'invoice', 'receipt', 'credit-note', 'warranty'] as const
const period = query(z.object({ from: civilDate, to: civilDate }))

const account = z.object({
  name: oneOf(accountNames),
  from: civilDate,
  to: civilDate,
  search: z.string().trim().max(100).default(''),
})

const turn = { before: openNumber, after: openNumber }
const openDay = civilDate.optional().transform(on => on ?? null)
const dayBookAsked = {
  area: oneOf(dayBookAreas)
    .optional()
    .transform(area => area ?? null),
  personId: openNumber,
  repair: openNumber,
  from: openDay,
  to: openDay,
}
const ownersTurn = {
  afterName: z.string().max(200).optional(),
  afterId: openWhole,
  beforeName: z.string().max(200).optional(),
  beforeId: openWhole,
}
const holidaysOf = {
  country: z.string().max(10),
  region: z.string().max(10).default(''),
  year: z.string().max(10).transform(Number),
}
const beingTakenIn = {
  clock: openNumber,
  form: keyOf(vocabulary.forms),
  trains: openNumber,
  power: oneOf(['unknown', ...vocabulary.powers]).default('unknown'),
  duration: oneOf(['unknown', ...vocabulary.durations]).default('unknown'),
  scope: oneOf(scopes),
  covered: oneOf(['yes', 'no'])
    .default('no')
    .transform(covered => covered === 'yes'),
}
const ownerLine = (name: string | undefined, id: number | null) =>
  name !== undefined && id !== null ? { name, id } : null

/** Views: what the pages show. They never change anything. */
export const pages = new Hono<Env>()
  .get('/shop', c => c.json(shopView(c.var.ledger.read, c.var.doing.at)))
  .get('/counter', c => c.json(counterView(c.var.ledger.read, c.var.doing.at)))
  .get('/repairs/:number', param({ number }), c =>
    c.json(repairView(c.var.ledger.read, c.req.valid('param').number, c.var.doing.at)),
  )
  .get('/repairs/:number/date', param({ number }), c => {
    const { read } = c.var.ledger
    const repair = repairByNumber(read, c.req.valid('param').number)
    return c.json({ suggested: suggestedDate(read, repair, c.var.doing.at) })
  })
  .get('/date', query(z.object(beingTakenIn)), c => {
    const { clock: clockId, ...said } = c.req.valid('query')
    return c.json({ suggested: dateForNew(c.var.ledger.read, { clockId, ...said }, c.var.doing.at) })
  })
  .get('/owners', query(z.object(ownersTurn)), c => {
    const { afterName, afterId, beforeName, beforeId } = c.req.valid('query')
    const turn = { after: ownerLine(afterName, afterId), before: ownerLine(beforeName, beforeId) }
    return c.json(ownersView(c.var.ledger.read, turn))
  })
  .get('/owners/:id', param({ id: number }), c =>
    c.json(ownerView(c.var.ledger.read, c.req.valid('param').id)),
  )
  .get('/owners/:id/forget', param({ id: number }), c => {
    const { problems, ...view } = forgetView(c.var.ledger.read, c.req.valid('param').id)
    const old = copiesOf(c.var.ledger.file).map(path => basename(path))
    return c.json({ ...view, problems: withMessages(problems), copies: old })
  })
  .get('/clocks/:id', param({ id: number }), c =>
    c.json(clockView(c.var.ledger.read, c.req.valid('param').id, c.var.doing.at)),
  )
  .get(
    '/documents',
    query(
      z.object({
        kind: oneOf(kinds)
          .optional()
          .transform(k => k ?? null),
        ...turn,
      }),
    ),
    c => c.json(accounts.documentsView(c.var.ledger.read, c.req.valid('query'))),
  )
  .get('/documents/:id', param({ id: number }), c => {
    const { ledger } = c.var
    const { id } = c.req.valid('param')
    return c.json({
      ...accounts.paperView(ledger.read, id),
      drawn: drawnPaper(ledger, { sort: 'issued', id }),
    })
  })
  .get('/owed', c => {
    const { read } = c.var.ledger
    return c.json(owedView(read, todayOf(c.var)))
  })
  .get('/ownerAccounts/:id', param({ id: number }), period, c =>
    c.json(ownerAccountView(c.var.ledger.read, c.req.valid('param').id, c.req.valid('query'))),
  )
  .get('/account', query(account), c => {
    const { name, search, ...period } = c.req.valid('query')
    return c.json(accountView(c.var.ledger.read, name, period, search))
  })
  .get('/drawer', query(z.object(turn)), c => c.json(drawerView(c.var.ledger.read, c.req.valid('query'))))
  .get('/periods', c => c.json(periodsView(c.var.ledger.read, todayOf(c.var))))
  .get('/tax', period, c => {
    const { from, to } = c.req.valid('query')
    return c.json(accounts.taxView(c.var.ledger.read, from, to))
  })
  .get('/payments', period, c => {
    const { from, to } = c.req.valid('query')
    return c.json(paymentsView(c.var.ledger.read, from, to))
  })
  .get('/dayBook', query(z.object({ ...turn, ...dayBookAsked })), c => {
    const { read } = c.var.ledger
    return c.json(dayBookView(read, c.req.valid('query'), readSettings(read).place.timeZone))
  })
  .get('/backups', c => {
    const { file } = c.var.ledger
    return c.json({
      ledger: resolve(file),
      folder: shopsFolder(c.var.ledger),
      rows: backupsOf(file, shopsFolder(c.var.ledger)),
    })
  })
  .get('/copies', c => {
    const { failed, ...view } = c.var.copies.view()
    return c.json({ ...view, failed: withMessages(failed) })
  })
  .get('/publicHolidays', query(z.object(holidaysOf)), async c => {
    const { country, region, year } = c.req.valid('query')
    return c.json(await publicHolidaysView(country, region, year))
  })
  .get('/dayFile', c =>
    c.json(
      dayBookActs(c.var.ledger.read).map(act =>
        'with' in act ? { ...act, with: asLiteral(act.with) } : act,
      ),
    ),
  )
