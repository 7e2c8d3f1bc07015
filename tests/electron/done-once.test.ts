import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openLedger } from '../../db/file/ledger.ts'
import { parseDayFile, playDay } from '../../electron/day/day-file.ts'
import { demoDayFile } from '../../electron/day/demo-shop.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { migrations } from '../db/temporary-ledger.ts'
import { picture } from '../pictures/pictures.ts'
import { invoicedRepair } from './billed-shop.ts'
import { freshHandler, openTestShop, rosamund, type Shop } from './handler-fixture.ts'

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
    const otherwise = await addOwner('Odalys Wrenn', key)
    expect([otherwise.status, codes(otherwise.body)]).toEqual([422, ['act.keyUsed']])
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

  it('on trial says whether it was done, and does nothing either way', async () => {
    const tried = async (under: string) => {
      const headers = {
        'Content-Type': 'application/json',
        'Countwheel-Trial': '1',
        'Idempotency-Key': under,
      }
      const body = JSON.stringify({ ...rosamund, name: 'Odalys Wren' })
      const answer = await shop.handle(
        new Request('http://ledger/api/register/addOwner', { method: 'POST', headers, body }),
      )
      return { done: answer.headers.get('Countwheel-Done'), body: await answer.json() }
    }
    const { body } = await addOwner('Odalys Wren', key)
    expect(await tried(key)).toEqual({ done: '1', body })
    expect((await tried(`${key}-2`)).done).toBeNull()
    expect(await owners()).toBe(1)
  })

  it('is answered also where the computer’s clock is in doubt meanwhile, though nothing new is written then', async () => {
    const doubting = await openTestShop(undefined, { played: false })
    const add = (name: string, under: string) =>
      doubting.tryAct('register.addOwner', { ...rosamund, name }, under)
    const first = await add('Odalys Wren', key)
    doubting.clock.at = '2027-02-26T10:00:00.000Z'
    expect(codes((await add('Dot Quill', `${key}-2`)).body)).toEqual(['clock.doubtedBehind'])
    expect(await add('Odalys Wren', key)).toEqual(first)
    doubting.close()
  })

  it('is refused where its text was taken out of the day book since: nobody can say whether it was this one', async () => {
    await addOwner('Odalys Wren', key)
    const { id, commitment } = shop.ledger.read.get<{ id: number; commitment: string }>(
      `SELECT id, commitment FROM day_book WHERE key = '${key}'`,
    )
    await shop.act('dayBook.redact', { rows: [{ id, commitment }], reason: 'Asked for by the owner' })
    const again = await addOwner('Odalys Wren', key)
    expect([again.status, codes(again.body)]).toEqual([422, ['act.keyRedacted']])
    expect(await owners()).toBe(1)
  })
})

it('the whole demonstration, each act sent twice under its key, is entered once; what is kept of an answer is short', async () => {
  const stage = freshHandler()
  const twice = async (request: Request) => {
    const first = await stage.handle(request.clone())
    const again = await stage.handle(request)
    expect(await again.text(), request.url).toBe(await first.clone().text())
    return first
  }
  const setNow = (at: string) => {
    stage.clock.at = at
  }
  const day = parseDayFile(readFileSync(demoDayFile(), 'utf8'))
  const acts = day.map((act, n) => ({ ...act, key: `act-number-${n}` }))
  await playDay({ handle: twice, setNow }, acts)
  const { entered, longest } = stage.ledger.read.get<{ entered: number; longest: number }>(
    'SELECT count(*) AS entered, max(length(result)) AS longest FROM day_book',
  )
  expect(entered).toBe(acts.length)
  // Numbers and amounts: what was typed stands in the input, and is not answered back.
  expect(longest).toBeLessThan(500)
  stage.close()
})

describe('what is sent again and is no act of the day book', () => {
  it('is a draft: kept once, and no more once what was typed is entered under its key', async () => {
    const keep = () =>
      shop.ask(`/api/drafts/${key}`, {
        method: 'PUT',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ page: 'take-in', title: 'Odalys Wren', body: { fault: 'Stops' } }),
      })
    const drafts = async () => (await shop.ask('/api/drafts?page=take-in')).body.drafts.length
    for (let n = 0; n < 2; n++) expect((await keep()).body).toEqual({ kept: true })
    expect(await drafts()).toBe(1)
    const takenIn = {
      owner: { name: 'Odalys Wren' },
      clock: { form: 'mantel', trains: 2, power: 'spring', duration: '8-day' },
      fault: 'Stops',
      draft: key,
    }
    const first = await shop.tryAct('counter.takeIn', takenIn, key)
    expect(first.status).toBe(200)
    expect((await keep()).body).toEqual({ kept: false })
    expect(await drafts()).toBe(0)
    expect(await shop.tryAct('counter.takeIn', takenIn, key)).toEqual(first)
    const otherwise = await shop.tryAct('counter.takeIn', { ...takenIn, fault: 'Gains' }, key)
    expect([otherwise.status, codes(otherwise.body)]).toEqual([422, ['act.keyUsed']])
  })

  it('is a photograph: the same bytes are kept once, under whatever key', async () => {
    const put = (under: string) =>
      shop.ask('/api/photographs', {
        method: 'PUT',
        headers: { 'Idempotency-Key': under },
        body: new Uint8Array(picture('quadrants.jpg')),
      })
    const first = await put(key)
    expect(first.status).toBe(200)
    expect([await put(key), await put(`${key}-2`)]).toEqual([first, first])
    expect((await shop.view('dayBook')).rows).toHaveLength(2)
  })
})
