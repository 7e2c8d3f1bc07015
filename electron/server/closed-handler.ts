import { Hono } from 'hono'
import { problem } from '../../core/problems.ts'
import { Refusal } from '../../db/rows/refusal.ts'
import type { Handle } from './hosts/limits.ts'
import { servePages } from './pages.ts'
import { answerTo, withMessages } from './problems.ts'
import { type Desk, restoreRequests } from './requests/restore.ts'

/** Addresses that only an open ledger answers. */
const ofTheLedger = ['/api/', '/papers/', '/photographs/', '/exports/']

/**
 * The handler around the ledger's own (`open`, where it is open): bringing back a backup works always; while the ledger is not open
 * the pages are served, and everything else says that it is not.
 */
export function closedHandler({ desk, pages }: { desk: Desk; pages: string }) {
  const serve = servePages(pages)
  const restoring = new Hono().route('/api/restore', restoreRequests(desk))
  restoring.all('/api/restore/*', () => {
    throw new Refusal([problem('request.unknown', '')])
  })
  restoring.onError((error, c) => {
    const { status, problems } = answerTo(error)
    if (status >= 500) console.error(error)
    return c.json({ problems: withMessages(problems) }, status)
  })
  const isRestoring = (path: string) => path === '/api/restore' || path.startsWith('/api/restore/')
  return async (request: Request, open: Handle | undefined): Promise<Response> => {
    const { pathname } = new URL(request.url)
    if (isRestoring(pathname)) return restoring.fetch(request)
    if (open) return open(request)
    if (!ofTheLedger.some(part => pathname.startsWith(part))) return serve(request)
    const { status, problems } = answerTo(new Refusal([problem('ledger.notOpen', '')]))
    return Response.json({ problems: withMessages(problems) }, { status })
  }
}
