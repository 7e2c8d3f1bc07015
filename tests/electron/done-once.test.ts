import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openLedger } from '../../db/file/ledger.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { migrations } from '../db/temporary-ledger.ts'
import { invoicedRepair } from './billed-shop.ts'
import { openTestShop, rosamund, type Shop } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const key = 'f1e2d3c4-0001'
const codes = (body: { problems: { code: string }[] }) => body.problems.map(({ code }) => code)
const addOwner = (name: string, under?: string) =>
  shop.tryAct('register.addOwner', { ...rosamund, name }, under)
const owners = async () => (await shop.view('owners')).rows.length

describe('an act sent again under its key', () => {
  it('is not done again: thirty equal payments under one key make one receipt, under thirty keys thirty', async () => {
    const { id } = await invoicedRepair(shop)
    const pay = (under: string) =>
      shop.tryAct('accounts.pay', { repairId: id, amount: '1.00', method: 'card' }, under)
    const answers = []
    for (let n = 0; n < 30; n++) answers.push((await pay(key)).body)
    expect(new Set(answers.map(answer => JSON.stringify(answer))).size).toBe(1)
    const receipts = async () => (await shop.view('documents?kind=receipt')).rows.length
    expect(await receipts()).toBe(1)
    for (let n = 0; n < 30; n++) expect((await pay(`${key}-${n}`)).status).toBe(200)
    expect(await receipts()).toBe(31)
  })

  it('with other words, or as another act, is refused', async () => {
    expect((await addOwner('Odalys Wren', key)).status).toBe(200)
    expect(codes((await addOwner('Odalys Wrenn', key)).body)).toEqual(['act.keyUsed'])
    expect(codes((await shop.tryAct('shop.addPerson', { name: 'Dot Quill' }, key)).body)).toEqual([
      'act.keyUsed',
    ])
    expect(await owners()).toBe(1)
  })

  it('answers the same after the program was closed and opened again', async () => {
    const { body } = await addOwner('Odalys Wren', key)
    shop.ledger.close()
    const ledger = openLedger(shop.file, { migrations, now: () => shop.clock.at, random })
    const handle = createHandler({ ledger, now: () => shop.clock.at, pages: '.', played: true })
    const again = await handle(
      new Request('http://ledger/api/register/addOwner', {
        method: 'POST',
        headers: {
          'Content-Type': 'application/json',
          'Countwheel-Person': String(shop.clock.person),
          'Idempotency-Key': key,
        },
        body: JSON.stringify({ ...rosamund, name: 'Odalys Wren' }),
      }),
    )
    expect(await again.json()).toEqual(body)
    ledger.close()
  })

  it('uses no key up where it was refused or only tried', async () => {
    expect((await addOwner('', key)).status).toBe(422)
    const tried = await shop.ask('/api/register/addOwner', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'Countwheel-Trial': '1', 'Idempotency-Key': key },
      body: JSON.stringify({ ...rosamund, name: 'Odalys Wren' }),
    })
    expect(tried.status).toBe(200)
    expect(await owners()).toBe(0)
    expect((await addOwner('Odalys Wren', key)).status).toBe(200)
    expect(await owners()).toBe(1)
  })

  it('can be named with quotes or without, in 8 to 128 letters, figures, dots, dashes and underscores', async () => {
    const ask = (header: string, name: string) =>
      shop.ask('/api/register/addOwner', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json', 'Idempotency-Key': header },
        body: JSON.stringify({ ...rosamund, name, contacts: [] }),
      })
    expect((await ask('"abcdefgh"', 'A')).status).toBe(200)
    expect((await ask('abcdefgh', 'A')).body).toEqual((await ask('"abcdefgh"', 'A')).body)
    expect((await ask('x'.repeat(128), 'B')).status).toBe(200)
    for (const header of [
      'abcdefg',
      'x'.repeat(129),
      '"abcdefgh',
      'abc defgh',
      'käse-käse'.replaceAll('ä', '/'),
    ])
      expect(codes((await ask(header, 'C')).body), header).toEqual(['request.keyMalformed'])
  })

  it('is one act in whatever order several are sent, lost and sent again', async () => {
    let made = 0
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer({ min: 0, max: 3 }), { maxLength: 12 }), async order => {
        const people = async () => (await shop.view('shop')).people.length
        const before = await people()
        made += 1
        for (const n of order)
          await shop.tryAct('shop.addPerson', { name: `Person ${made}.${n}` }, `run-${made}-key-${n}`)
        expect((await people()) - before).toBe(new Set(order).size)
      }),
      { numRuns: 15 },
    )
  })
})
