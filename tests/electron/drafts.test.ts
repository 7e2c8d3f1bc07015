import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const key = 'a1b2c3d4-e5f6'
const put = (path: string, body: unknown = {}) =>
  shop.ask(`/api/drafts/${path}`, {
    method: 'PUT',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  })
const typed = (fault: string) => ({ page: 'take-in', title: 'Rosamund Pell', body: { fault } })
const list = async () => (await shop.ask('/api/drafts?page=take-in')).body.drafts

describe('a draft', () => {
  it('keeps what is typed so far under its key and gives it back as it was', async () => {
    await put(key, typed('Stops at the qua'))
    await put(key, typed('Stops at the quarter.'))
    expect((await shop.ask(`/api/drafts/${key}`)).body.body).toEqual({ fault: 'Stops at the quarter.' })
    expect(await list()).toHaveLength(1)
  })

  it('stands beside other drafts of its page, the last touched first', async () => {
    await put(key, typed('One'))
    shop.clock.at = '2027-03-01T10:00:00.000Z'
    await put('second-draft', { ...typed('Two'), title: 'T. Okafor-Lind' })
    expect((await list()).map((d: { title: string }) => d.title)).toEqual(['T. Okafor-Lind', 'Rosamund Pell'])
  })

  it('is gone in the same transaction in which its clock is taken in', async () => {
    await put(key, typed('Stops'))
    await takeInPell(shop, { draft: key })
    expect(await list()).toEqual([])
    expect((await shop.ask(`/api/drafts/${key}`)).status).toBe(404)
  })

  it('stays when taking in is refused', async () => {
    await put(key, typed('Stops'))
    await shop.tryAct('counter.takeIn', { draft: key })
    expect(await list()).toHaveLength(1)
  })

  it('can be thrown away, and is no act of the day book', async () => {
    await put(key, typed('Stops'))
    await put(`${key}/drop`)
    expect(await list()).toEqual([])
    expect((await shop.view('dayBook')).rows).toHaveLength(1)
  })

  it('refuses a key or a page that is none', async () => {
    expect((await put('short', typed('x'))).status).toBe(422)
    expect((await put(key, { ...typed('x'), page: '../etc' })).status).toBe(422)
  })

  it('may nest as deep as a form does, and is refused beyond, however deep', async () => {
    const nested = (levels: number) => `${'['.repeat(levels)}${']'.repeat(levels)}`
    const keep = (levels: number) =>
      shop.ask(`/api/drafts/${key}`, {
        method: 'PUT',
        headers: { 'Content-Type': 'application/json' },
        body: `{"page":"take-in","title":"","body":{"a":${nested(levels)}}}`,
      })
    expect((await keep(49)).status).toBe(200)
    for (const levels of [51, 1001, 100_000]) {
      const { status, body } = await keep(levels)
      expect([status, body.problems[0].code], String(levels)).toEqual([422, 'input.tooDeep'])
    }
  })
})
