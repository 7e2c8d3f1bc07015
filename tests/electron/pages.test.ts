import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { contentSecurityPolicy } from '../../electron/server/guard-headers.ts'
import { servePages } from '../../electron/server/pages.ts'

const folder = mkdtempSync(join(tmpdir(), 'pages-'))
const pages = servePages(join(folder, 'client'))
const get = (path: string, init?: RequestInit) => pages(new Request(`http://127.0.0.1:1${path}`, init))

beforeAll(() => {
  mkdirSync(join(folder, 'client/assets'), { recursive: true })
  writeFileSync(join(folder, 'secret.txt'), 'outside')
  const files = { 'index.html': '<h1>Ledger</h1>', 'mark.svg': '<svg/>', 'assets/index-Ab12.js': 'export {}' }
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, 'client', name), text)
  for (const name of ['index-Ab12.css', 'face-Ab12.woff2'])
    writeFileSync(join(folder, 'client/assets', name), '')
})
afterAll(() => rmSync(folder, { recursive: true }))

describe('the built pages', () => {
  test.each([
    ['/', 'text/html; charset=utf-8'],
    ['/mark.svg', 'image/svg+xml; charset=utf-8'],
    ['/assets/index-Ab12.js', 'text/javascript; charset=utf-8'],
    ['/assets/index-Ab12.css', 'text/css; charset=utf-8'],
    ['/assets/face-Ab12.woff2', 'font/woff2'],
  ])('%s is served as %s', async (path, type) => {
    const answer = await get(path)
    expect(answer.status).toBe(200)
    expect(answer.headers.get('content-type')).toBe(type)
  })

  test.each(['/counter', '/register/clocks/12', '/caf%C3%A9'])('%s is a page of the ledger', async path => {
    const answer = await get(path)
    expect(answer.status).toBe(200)
    expect(await answer.text()).toBe('<h1>Ledger</h1>')
  })

  test('hashed files are kept for good, the first page is asked for each time', async () => {
    expect((await get('/assets/index-Ab12.js')).headers.get('cache-control')).toContain('immutable')
    for (const path of ['/', '/counter', '/mark.svg']) {
      expect((await get(path)).headers.get('cache-control'), path).toBe('no-cache')
    }
  })

  test('a missing file is 404, not the first page', async () => {
    expect((await get('/assets/index-Zz99.js')).status).toBe(404)
    expect((await get('/mark.svg/more.svg')).status).toBe(404)
  })

  test('HEAD answers as GET does, without the body', async () => {
    const answer = await get('/', { method: 'HEAD' })
    expect(answer.headers.get('content-length')).toBe('15')
    expect(await answer.text()).toBe('')
  })

  test('no other method is taken', async () => {
    expect((await get('/', { method: 'POST' })).status).toBe(405)
  })
})

describe('what guards the pages', () => {
  test('every page has the strict content policy, which allows nothing inline and nothing from elsewhere', async () => {
    const policy = (await get('/counter')).headers.get('content-security-policy') ?? ''
    expect(policy).toBe(contentSecurityPolicy)
    expect(policy).toContain("default-src 'none'")
    expect(policy).toContain("script-src 'self';")
    expect(policy).toContain("frame-ancestors 'none'")
    expect(policy).not.toMatch(/unsafe|https?:|\*/)
  })

  test('no type is guessed, nothing says where it came from', async () => {
    const { headers } = await get('/mark.svg')
    expect(headers.get('x-content-type-options')).toBe('nosniff')
    expect(headers.get('referrer-policy')).toBe('no-referrer')
    expect(headers.get('cross-origin-resource-policy')).toBe('same-origin')
  })

  test.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/%2e%2e%2fsecret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/..%5csecret.txt',
    '/%2e%2e%5csecret.txt',
    '/assets/%00.js',
    '/../../../../etc/passwd',
    '/%2fetc%2fpasswd',
  ])('a path never leads out of the folder: %s', async path => {
    const answer = await get(path)
    expect(await answer.text()).not.toMatch(/outside|root:/)
    expect(answer.status === 200 ? answer.headers.get('content-type') : '4xx').toMatch(/html|4xx/)
    expect(answer.status).not.toBe(500)
  })

  test('a name too long for any file is 404', async () => {
    expect((await get(`/${'a'.repeat(5000)}.js`)).status).toBe(404)
  })

  test.each(['/%', '/%E0%A4%A', '/a%ffb.js'])('a malformed address is 400: %s', async path => {
    expect((await get(path)).status).toBe(400)
  })
})
