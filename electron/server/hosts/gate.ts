import { daySeconds } from '../../../core/calendar/units.ts'
import type { Refusal } from '../../../core/words/en/start.ts'
import { guardHeaders } from '../guard-headers.ts'
import { refuse } from '../refusals.ts'
import type { Keys } from './keys.ts'
import type { Handle } from './limits.ts'

/** One browser's cookie; its name carries the port, as cookies of one computer do not tell ports apart. */
const cookieName = (port: number) => `countwheel-${port}`

/** A week: the token dies with the run anyway, and a browser closed overnight comes back in. */
const cookieSeconds = 7 * daySeconds

/** The names this computer has for itself; any other Host is a page that had its own name point here (DNS rebinding). */
function hostRefusal(request: Request, port: number): Refusal | undefined {
  const known = [`127.0.0.1:${port}`, `localhost:${port}`]
  return known.includes(request.headers.get('host')?.toLowerCase() ?? '') ? undefined : 'request.hostForeign'
}

/** A page of another site, another port or no site at all asks; a typed address, a bookmark and our own pages do not. */
function originRefusal(request: Request): Refusal | undefined {
  const origin = request.headers.get('origin')
  const site = request.headers.get('sec-fetch-site') ?? 'none'
  const own =
    origin === null || origin.toLowerCase() === `http://${request.headers.get('host')?.toLowerCase()}`
  return own && (site === 'none' || site === 'same-origin') ? undefined : 'request.originForeign'
}

const bearer = (request: Request) => /^Bearer ([\w-]+)$/.exec(request.headers.get('authorization') ?? '')?.[1]

function cookie(request: Request, name: string): string | undefined {
  const pairs = (request.headers.get('cookie') ?? '').split(';').map(pair => pair.trim())
  return pairs.find(pair => pair.startsWith(`${name}=`))?.slice(name.length + 1)
}

/** A browser that has been let in by cookie, or a script that shows the run's key. */
function isLetIn(request: Request, port: number, keys: Keys): boolean {
  const token = cookie(request, cookieName(port))
  const key = bearer(request)
  return (token !== undefined && keys.isBrowser(token)) || (key !== undefined && keys.isRunKey(key))
}

/** Sends the browser to the same page without its key, so that neither address bar nor history keep it. */
const withoutKey = (headers: Record<string, string> = {}) =>
  new Response(null, {
    status: 303,
    headers: { ...guardHeaders, Location: '/', 'Cache-Control': 'no-store', ...headers },
  })

/** The printed address being opened: a browser already in just goes on and its key stays unused. */
function openWithKey(key: string, request: Request, port: number, keys: Keys): Response {
  if (isLetIn(request, port, keys)) return withoutKey()
  const token = keys.exchange(key)
  if (!token) return refuse('/', 'request.keyMissing')
  return withoutKey({
    'Set-Cookie': `${cookieName(port)}=${token}; Path=/; Max-Age=${cookieSeconds}; HttpOnly; SameSite=Strict`,
  })
}

/**
 * The rules of the loopback host around the handler: own Host and Origin or 403, a key or a let-in browser or 401.
 * Source: OWASP's advice on DNS rebinding and cross-site requests; each rule has its test.
 */
export function gate(handle: Handle, { port, keys }: { port: number; keys: Keys }): Handle {
  return async request => {
    const url = new URL(request.url)
    const refusal = hostRefusal(request, port) ?? originRefusal(request)
    if (refusal) return refuse(url.pathname, refusal)
    const key = url.searchParams.get('key')
    if (request.method === 'GET' && url.pathname === '/' && key !== null) {
      return openWithKey(key, request, port, keys)
    }
    return isLetIn(request, port, keys) ? handle(request) : refuse(url.pathname, 'request.keyMissing')
  }
}
