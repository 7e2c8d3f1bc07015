import { once } from 'node:events'
import { type IncomingMessage, request } from 'node:http'
import { text } from 'node:stream/consumers'

/** An answer as it came over the socket. */
export interface Answer {
  readonly status: number
  readonly headers: IncomingMessage['headers']
  readonly body: string
}

export interface Asked {
  readonly method?: string
  readonly headers?: Record<string, string>
  readonly body?: string | Buffer
  /** Sent in pieces without a length said before. */
  readonly chunked?: boolean
}

/** One request over a real socket with exactly these headers; `fetch` would not let Host and Origin be forged. */
export async function ask(port: number, path: string, asked: Asked = {}): Promise<Answer> {
  const length =
    asked.body && !asked.chunked ? { 'Content-Length': String(Buffer.byteLength(asked.body)) } : {}
  const outgoing = request({
    host: '127.0.0.1',
    port,
    path,
    method: asked.method ?? 'GET',
    headers: { Host: `127.0.0.1:${port}`, ...length, ...asked.headers },
    agent: false,
  })
  // A refused body may be cut off while it is still being sent; the answer is there all the same.
  outgoing.on('error', () => undefined)
  // A body ended in one go is sent with its length, whatever was said before.
  if (asked.chunked) outgoing.flushHeaders()
  outgoing.end(asked.body)
  const [incoming] = (await once(outgoing, 'response')) as [IncomingMessage]
  return { status: incoming.statusCode ?? 0, headers: incoming.headers, body: await text(incoming) }
}

/** The cookie of an answer, as a browser would send it back. */
export const cookieOf = (answer: Answer): string => answer.headers['set-cookie']?.[0]?.split(';')[0] ?? ''
