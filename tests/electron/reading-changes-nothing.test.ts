import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { api } from '../../electron/server/api.ts'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop

beforeAll(async () => {
  shop = await openTestShop()
  await takeInPell(shop)
})
afterAll(() => shop.close())

/** Everything in the ledger, as the bytes of a fresh copy of it. */
function everything(): Buffer {
  const copy = join(shop.folder, 'copy')
  shop.ledger.backUp(copy)
  return readFileSync(copy)
}

const paths = (method: string) => [
  ...new Set(api.routes.filter(route => route.method === method).map(route => `/api${route.path}`)),
]

const get = (path: string) => shop.handle(new Request(`http://ledger${path}`))

test('no GET of an act does it', async () => {
  const before = everything()
  expect(paths('POST').length).toBeGreaterThan(10)
  for (const path of paths('POST')) expect((await get(path)).status, path).toBe(404)
  expect(everything().equals(before)).toBe(true)
})

test('no view writes anything', async () => {
  const before = everything()
  const views = paths('GET').map(path => path.replace(/:\w+(\{[^}]*\})?/g, '1'))
  expect(views.length).toBeGreaterThan(3)
  for (const path of [...views, '/papers/1.pdf', '/counter']) {
    expect((await get(path)).status, path).toBeLessThan(500)
  }
  expect(everything().equals(before)).toBe(true)
})

test('an act does: the comparison sees a change', async () => {
  const before = everything()
  await takeInPell(shop)
  expect(everything().equals(before)).toBe(false)
})
