import { Hono, type MiddlewareHandler } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { guardHeaders } from '../guard-headers.ts'
import { refuse } from '../refusals.ts'

/** Answers a request: the ledger's handler, or a host's rules around it. */
export type Handle = (request: Request) => Promise<Response>

const megabyte = 1024 * 1024

/** The longest body taken, in bytes. */
export const longestBody = { photograph: 12 * megabyte, list: 64 * megabyte, other: megabyte } as const

const methods: readonly string[] = ['GET', 'HEAD', 'POST', 'PUT']

/** A photograph travels as its own bytes, so its content type tells it from an entry. */
const isPhotograph = (request: Request) => /^image\//i.test(request.headers.get('content-type') ?? '')

/** A whole shop's owners and clocks are entered at once, or not at all. */
const isList = (request: Request) => new URL(request.url).pathname.startsWith('/api/register/import')

const capped = (maxSize: number): MiddlewareHandler =>
  bodyLimit({ maxSize, onError: c => refuse(c.req.path, 'request.tooLong') })

/** Every answer, of whatever request, has the headers that guard it; what does not say how long it may be kept is not kept. */
const guardAnswer: MiddlewareHandler = async (c, next) => {
  await next()
  if (!c.res.headers.has('Cache-Control')) c.res.headers.set('Cache-Control', 'no-store')
  for (const [name, value] of Object.entries(guardHeaders)) c.res.headers.set(name, value)
}

/**
 * The limits of both hosts around the handler: the four methods the ledger knows, no over-long body, the headers that
 * guard every answer.
 */
export function limited(handle: Handle): Handle {
  const photograph = capped(longestBody.photograph)
  const list = capped(longestBody.list)
  const other = capped(longestBody.other)
  const app = new Hono()
  app.use(guardAnswer)
  app.use(async (c, next) => {
    if (!methods.includes(c.req.method)) return refuse(c.req.path, 'request.methodUnknown')
    return (isPhotograph(c.req.raw) ? photograph : isList(c.req.raw) ? list : other)(c, next)
  })
  app.all('*', c => handle(c.req.raw))
  app.onError((error, c) => {
    console.error(error)
    return refuse(c.req.path, 'request.failed')
  })
  return async request => app.fetch(request)
}
