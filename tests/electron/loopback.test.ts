import { once } from 'node:events'
import { connect } from 'node:net'
import { networkInterfaces } from 'node:os'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { longestBody } from '../../electron/server/hosts/limits.ts'
import { type Loopback, serveLoopback } from '../../electron/server/hosts/loopback.ts'
import { ask, cookieOf } from './ask.ts'

let host: Loopback
let reached: string[]

/** A ledger in miniature: notes what reaches it, answers with what it got. */
async function handle(request: Request): Promise<Response> {
  const { pathname } = new URL(request.url)
  reached.push(`${request.method} ${pathname}`)
  if (pathname === '/api/break') throw new Error('a mistake of ours, at /secret/place.ts')
  return new Response(`${(await request.arrayBuffer()).byteLength} bytes`)
}

beforeEach(async () => {
  reached = []
  host = await serveLoopback(handle, { port: 0 })
})
afterEach(() => host.close())

const bearer = () => ({ Authorization: `Bearer ${host.key}` })
const withKey = (key = host.key) => `/?key=${key}`
const freshKey = () => new URL(host.freshAddress()).searchParams.get('key') ?? ''
const letIn = async () => ({ Cookie: cookieOf(await ask(host.port, withKey(freshKey()))) })

describe('where the ledger can be reached', () => {
  test('it listens on this computer’s own address and on no address of the network', async () => {
    expect((await ask(host.port, '/', { headers: bearer() })).status).toBe(200)
    const addresses = Object.values(networkInterfaces()).flatMap(list => list ?? [])
    const outside = addresses.filter(one => !one.internal && one.family === 'IPv4').map(one => one.address)
    for (const address of [...outside, '127.0.0.2']) {
      const socket = connect(host.port, address)
      const [error] = await once(socket, 'error')
      expect(error.code, address).toBe('ECONNREFUSED')
    }
  })

  test('a taken port is told, or another one is taken where none was asked for', async () => {
    await expect(serveLoopback(handle, { port: host.port })).rejects.toMatchObject({ code: 'EADDRINUSE' })
    const other = await serveLoopback(handle, { port: host.port, elseAny: true })
    expect(other.port).not.toBe(host.port)
    await other.close()
  })

  test('the port is free again after closing', async () => {
    await host.close()
    host = await serveLoopback(handle, { port: host.port })
    expect((await ask(host.port, '/', { headers: bearer() })).status).toBe(200)
  })
})

test('an answer that does not say how long it may be kept is not kept', async () => {
  const answer = await ask(host.port, '/api/x/y', { headers: bearer() })
  expect(answer.headers['cache-control']).toBe('no-store')
})

describe('Host and Origin (DNS rebinding, cross-site requests)', () => {
  test.each(['evil.example', 'evil.example:80', '127.0.0.1', '127.0.0.1:1', '[::1]', '0.0.0.0'])(
    'a foreign Host is answered 403: %s',
    async name => {
      const answer = await ask(host.port, '/', { headers: { ...bearer(), Host: name } })
      expect(answer.status).toBe(403)
      expect(reached).toEqual([])
    },
  )

  test.each(['127.0.0.1', 'localhost', 'LOCALHOST'])('the computer’s own name is taken: %s', async name => {
    const headers = { ...bearer(), Host: `${name}:${host.port}` }
    expect((await ask(host.port, '/', { headers })).status).toBe(200)
  })

  test.each(['null', 'https://evil.example', 'http://127.0.0.1', 'http://127.0.0.1:1', 'file://'])(
    'a foreign or null Origin is answered 403: %s',
    async origin => {
      for (const method of ['GET', 'POST']) {
        const answer = await ask(host.port, '/api/find', { method, headers: { ...bearer(), Origin: origin } })
        expect(answer.status).toBe(403)
      }
      expect(reached).toEqual([])
    },
  )

  test('localhost and 127.0.0.1 are two origins: a page of one does not ask the other', async () => {
    const headers = { ...bearer(), Origin: `http://localhost:${host.port}` }
    expect((await ask(host.port, '/', { headers })).status).toBe(403)
  })

  test.each(['cross-site', 'same-site'])(
    'Sec-Fetch-Site %s is answered 403, even to the printed address',
    async site => {
      const headers = { 'Sec-Fetch-Site': site }
      expect((await ask(host.port, withKey(), { headers })).status).toBe(403)
      expect((await ask(host.port, '/', { headers: { ...headers, ...bearer() } })).status).toBe(403)
      expect((await ask(host.port, withKey())).status, 'the key was not used up').toBe(303)
    },
  )

  test('the ledger’s own pages may ask', async () => {
    const headers = {
      ...(await letIn()),
      Origin: `http://127.0.0.1:${host.port}`,
      'Sec-Fetch-Site': 'same-origin',
    }
    expect((await ask(host.port, '/api/find', { headers, method: 'POST' })).status).toBe(200)
  })

  test('no answer invites another origin', async () => {
    const preflight = await ask(host.port, '/api/find', { method: 'OPTIONS', headers: bearer() })
    expect(preflight.status).toBe(405)
    const answer = await ask(host.port, '/api/find', { headers: bearer() })
    expect(answer.headers['access-control-allow-origin']).toBeUndefined()
  })
})

describe('the key', () => {
  test('has at least 128 bits and is another one in each run', async () => {
    expect(Buffer.from(host.key, 'base64url').byteLength * 8).toBeGreaterThanOrEqual(128)
    const other = await serveLoopback(handle, { port: 0 })
    expect(other.key).not.toBe(host.key)
    await other.close()
  })

  test('without it everything is answered 401 and nothing reaches the ledger', async () => {
    for (const path of ['/', '/counter', '/assets/a.js', '/api/find', '/papers/1.pdf']) {
      expect((await ask(host.port, path)).status, path).toBe(401)
    }
    expect((await ask(host.port, '/api/repairs/take-in', { method: 'POST', body: '{}' })).status).toBe(401)
    expect(reached).toEqual([])
  })

  test('the printed address trades it for a cookie and leads on to the address without it', async () => {
    const answer = await ask(host.port, withKey())
    expect(answer.status).toBe(303)
    expect(answer.headers.location).toBe('/')
    expect(answer.headers['referrer-policy']).toBe('no-referrer')
    expect(answer.headers['set-cookie']?.[0]).toMatch(/; Path=\/; .*HttpOnly; SameSite=Strict$/)
    expect(cookieOf(answer)).not.toContain(host.key)
    expect((await ask(host.port, '/', { headers: { Cookie: cookieOf(answer) } })).status).toBe(200)
  })

  test('lets in one browser: a second one is answered 401 and told how to get in', async () => {
    await ask(host.port, withKey())
    const second = await ask(host.port, withKey())
    expect(second.status).toBe(401)
    expect(second.headers['set-cookie']).toBeUndefined()
    expect(second.body).toContain('start Countwheel again')
  })

  test('the browser that came in by it comes in again by the printed address', async () => {
    const first = await ask(host.port, withKey())
    const again = await ask(host.port, withKey(), { headers: { Cookie: cookieOf(first) } })
    expect(again.status).toBe(303)
    expect(again.headers['set-cookie']).toBeUndefined()
  })

  test('a browser already in does not use a fresh key up', async () => {
    const key = freshKey()
    await ask(host.port, withKey(key), { headers: await letIn() })
    expect((await ask(host.port, withKey(key))).headers['set-cookie']).toHaveLength(1)
  })

  test('each fresh address lets in one more browser, and those before stay in', async () => {
    const first = await letIn()
    const second = await letIn()
    expect(first).not.toEqual(second)
    for (const headers of [first, second]) expect((await ask(host.port, '/', { headers })).status).toBe(200)
  })

  test('scripts show it as a bearer, as often as they like', async () => {
    await ask(host.port, withKey())
    for (let turn = 0; turn < 2; turn++) {
      expect((await ask(host.port, '/api/find', { headers: bearer() })).status).toBe(200)
    }
  })

  test('a wrong key, a fresh address’s key as bearer or another run’s cookie do not open', async () => {
    const wrong = [
      { Authorization: `Bearer ${host.key.slice(0, -1)}` },
      { Authorization: `Bearer ${freshKey()}` },
      { Authorization: `Basic ${host.key}` },
      { Cookie: `countwheel-${host.port}=${host.key}` },
      { Cookie: `countwheel-1=${cookieOf(await ask(host.port, withKey(freshKey()))).split('=')[1]}` },
    ]
    for (const headers of wrong) expect((await ask(host.port, '/', { headers })).status).toBe(401)
    expect((await ask(host.port, withKey('wrong'))).status).toBe(401)
    expect(await ask(host.port, '/?key=')).toMatchObject({ status: 401 })
  })

  test('only opening the first page uses it up', async () => {
    expect((await ask(host.port, withKey(), { method: 'HEAD' })).status).toBe(401)
    expect((await ask(host.port, withKey(), { method: 'POST' })).status).toBe(401)
    expect((await ask(host.port, `/counter?key=${host.key}`)).status).toBe(401)
    expect((await ask(host.port, withKey())).status).toBe(303)
  })
})

describe('what is taken', () => {
  test.each(['DELETE', 'PATCH', 'OPTIONS', 'PROPFIND'])('%s is answered 405', async method => {
    const answer = await ask(host.port, '/api/find', { method, headers: bearer() })
    expect(answer.status).toBe(405)
    expect(reached).toEqual([])
  })

  test.each([true, false])(
    'a body of 1 MB is taken, one byte more is answered 413 (in pieces: %s)',
    async chunked => {
      const send = (bytes: number) =>
        ask(host.port, '/api/x/y', { method: 'POST', headers: bearer(), body: Buffer.alloc(bytes), chunked })
      expect((await send(longestBody.other)).body).toBe(`${longestBody.other} bytes`)
      expect((await send(longestBody.other + 1)).status).toBe(413)
    },
  )

  test.each([true, false])(
    'a photograph may have 12 MB and not a byte more (in pieces: %s)',
    async chunked => {
      const headers = { ...bearer(), 'Content-Type': 'image/jpeg' }
      const send = (bytes: number) =>
        ask(host.port, '/api/x/y', { method: 'POST', headers, body: Buffer.alloc(bytes), chunked })
      expect((await send(longestBody.photograph)).body).toBe(`${longestBody.photograph} bytes`)
      expect((await send(longestBody.photograph + 1)).status).toBe(413)
    },
  )

  test('an over-long body is refused by its announced length, without being read', async () => {
    const headers = { ...bearer(), 'Content-Length': '999999999' }
    const socket = connect(host.port, '127.0.0.1')
    const lines = Object.entries({ Host: `127.0.0.1:${host.port}`, ...headers }).map(pair => pair.join(': '))
    socket.write(`POST /api/x/y HTTP/1.1\r\n${lines.join('\r\n')}\r\n\r\n`)
    const [start] = await once(socket, 'data')
    expect(String(start)).toMatch(/^HTTP\/1.1 413 /)
    socket.destroy()
  })
})

describe('every answer', () => {
  test('lets no type be guessed, no other site use it, and nothing say where a visit came from', async () => {
    const answers = [
      await ask(host.port, '/papers/1.pdf', { headers: bearer() }),
      await ask(host.port, '/api/find', { method: 'DELETE', headers: bearer() }),
      await ask(host.port, '/'),
      await ask(host.port, withKey()),
    ]
    expect(answers.map(answer => answer.status)).toEqual([200, 405, 401, 303])
    for (const { headers } of answers) {
      expect(headers['x-content-type-options']).toBe('nosniff')
      expect(headers['cross-origin-resource-policy']).toBe('same-origin')
      expect(headers['referrer-policy']).toBe('no-referrer')
    }
  })
})

describe('refusals', () => {
  test('are a problem list for programs and a small page for people', async () => {
    const data = await ask(host.port, '/api/find')
    expect(data.headers['content-type']).toBe('application/json')
    const [problem] = JSON.parse(data.body).problems
    expect(problem).toMatchObject({ code: 'request.keyMissing', field: '' })
    expect(problem.message).toContain('Open the address that Countwheel printed')
    const page = await ask(host.port, '/counter')
    expect(page.headers['content-type']).toContain('text/html')
    expect(page.headers['content-security-policy']).toContain("default-src 'none'")
    expect(page.body).toContain('<h1>')
  })

  test('a mistake of ours is answered 500 without saying where', async () => {
    const told = vi.spyOn(console, 'error').mockImplementation(() => undefined)
    const answer = await ask(host.port, '/api/break', { headers: bearer() })
    expect(told).toHaveBeenCalledOnce()
    told.mockRestore()
    expect(answer.status).toBe(500)
    expect(answer.body).not.toContain('secret')
    expect(JSON.parse(answer.body).problems).toHaveLength(1)
  })

  test.each([
    '/%',
    '/%E0%A4%A',
    '/api/%ff',
    '//evil.example/',
    '/..%2f..%2fetc/passwd',
    '/\\windows',
    '/api/../../x',
  ])('a malformed address never breaks the host: %s', async path => {
    const answer = await ask(host.port, path, { headers: bearer() })
    expect([200, 400, 401, 404]).toContain(answer.status)
  })
})
