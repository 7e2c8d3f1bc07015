import { Hono } from 'hono'
import { problem } from '../../core/problems.ts'
import { type Ledger, onTrial } from '../../db/file/ledger.ts'
import { isKeyUsed } from '../../db/rows/day-book.ts'
import { Refusal } from '../../db/rows/refusal.ts'
import { refuseReserved } from '../../db/rules/may.ts'
import { type CopyKeeper, copyKeeper } from '../copies/keeper.ts'
import { personOf, wantedBy } from './acting.ts'
import { api } from './api.ts'
import { idempotencyKey } from './idempotency-key.ts'
import { servePages } from './pages.ts'
import { answerTo, withMessages } from './problems.ts'
import { eInvoices } from './requests/e-invoice.ts'
import { exports } from './requests/exports.ts'
import { papers } from './requests/papers.ts'
import type { Env } from './requests/perform.ts'
import { photographFiles } from './requests/photographs.ts'

/** What the handler works with. */
export interface HandlerParts {
  readonly ledger: Ledger
  /** The present instant, ISO with milliseconds and Z. */
  readonly now: () => string
  /** Folder of the built pages. */
  readonly pages: string
  /**
   * Acts are played from a day file: their times are the file's, so the clock is not doubted, and photographs may come beside the
   * ledger later.
   */
  readonly played?: boolean
  /** Whoever makes the ledger's copies; one of its own, which makes none by itself, where it is left out. */
  readonly copies?: CopyKeeper
}

/** Addresses under which somebody asks at some time. */
const ofTheLedger = ['/api/', '/papers/', '/exports/']

/** One handler for both hosts: the requests under /api, the papers, the photographs, the exports, and the pages themselves. */
export function createHandler({
  ledger,
  now,
  pages,
  played = false,
  copies = copyKeeper(ledger, now),
}: HandlerParts): (request: Request) => Promise<Response> {
  const serve = servePages(pages)
  const app = new Hono<Env>()
  app.use('/*', async (c, next) => {
    // An act is tried before a person is asked about it: answered as if done, and taken back.
    c.set('played', played)
    c.set('copies', copies)
    const trial = c.req.header('Countwheel-Trial') !== undefined
    c.set('trial', trial)
    c.set('ledger', trial ? onTrial(ledger) : ledger)
    if (ofTheLedger.some(part => c.req.path.startsWith(part))) {
      ledger.stillThere()
      const personId = personOf(ledger.read, c.req.raw)
      const key = idempotencyKey(c.req.header('Idempotency-Key'))
      c.set('doing', { at: now(), personId, key })
      // What a day file tells was done, and what was done before under its key is only answered again.
      const wanted = played || isKeyUsed(ledger.read, key) ? null : wantedBy(c.req.method, c.req.path)
      if (wanted !== null) refuseReserved(ledger.read, wanted, personId)
    }
    await next()
  })
  app
    .route('/api', api)
    .route('/papers', eInvoices)
    .route('/papers', papers)
    .route('/photographs', photographFiles)
    .route('/exports', exports)
  app.all('/api/*', () => {
    throw new Refusal([problem('request.unknown', '')])
  })
  app.all('*', c => serve(c.req.raw))
  app.onError((error, c) => {
    const { status, problems } = answerTo(error)
    if (status >= 500) console.error(error)
    return c.json({ problems: withMessages(problems) }, status)
  })
  return async request => app.fetch(request)
}
