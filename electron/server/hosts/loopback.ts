import { once } from 'node:events'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { getRequestListener } from '@hono/node-server'
import { refuse } from '../refusals.ts'
import { gate } from './gate.ts'
import { createKeys } from './keys.ts'
import { type Handle, limited } from './limits.ts'

/** A ledger being served to the browsers of this computer. */
export interface Loopback {
  readonly port: number
  /** The run's key, for scripts. */
  readonly key: string
  /** The address of the first page with the run's key: lets in one browser. */
  readonly address: string
  /** The same address with a key of its own, for one more browser. */
  freshAddress(): string
  /** Lets running requests end (2 seconds at most) and frees the port. */
  close(): Promise<void>
}

const graceMs = 2000

async function close(server: Server): Promise<void> {
  const closed = once(server, 'close')
  server.close()
  server.closeIdleConnections()
  const late = setTimeout(() => server.closeAllConnections(), graceMs)
  await closed
  clearTimeout(late)
}

/** Which port to listen on: `port` itself, or with `elseAny` any free one where it is taken. */
async function listen(server: Server, port: number, elseAny: boolean): Promise<number> {
  try {
    server.listen(port, '127.0.0.1')
    await once(server, 'listening')
    return (server.address() as AddressInfo).port
  } catch (error) {
    if (!elseAny || (error as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw error
    return listen(server, 0, false)
  }
}

/**
 * A body sent in pieces without its length is measured as it is read, and the reader makes the request anew: that works with the
 * platform's own Request, not with the server's stand-in for it.
 */
function measurable(request: Request): Request {
  const { url, method, headers, signal, body } = request
  if (!headers.has('transfer-encoding') || !body) return request
  const sent: RequestInit & { duplex: 'half' } = { method, headers, signal, body, duplex: 'half' }
  return new Request(url, sent)
}

/**
 * Serves `handle` on 127.0.0.1 only, behind the gate and the limits. Port 0 is any free one; `elseAny` takes any
 * free one where `port` is in use. Throws Node's EADDRINUSE or EACCES where it cannot listen.
 */
export async function serveLoopback(
  handle: Handle,
  { port, elseAny = false }: { port: number; elseAny?: boolean },
): Promise<Loopback> {
  const keys = createKeys()
  let inside: Handle = async () => refuse('/', 'request.keyMissing')
  const listener = getRequestListener(request => inside(measurable(request)), {
    overrideGlobalObjects: false,
    errorHandler: () => refuse('/', 'request.malformed'),
  })
  const server = createServer(listener)
  const open = await listen(server, port, elseAny)
  inside = gate(limited(handle), { port: open, keys })
  const address = (key: string) => `http://127.0.0.1:${open}/?key=${key}`
  return {
    port: open,
    key: keys.runKey,
    address: address(keys.runKey),
    freshAddress: () => address(keys.invite()),
    close: () => close(server),
  }
}
