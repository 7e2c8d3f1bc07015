import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { verified } from '../../db/verify/index.ts'
import { places } from '../../electron/places.ts'
import { invoicedRepair } from './billed-shop.ts'
import { openTestShop, rosamund, type Shop } from './handler-fixture.ts'

// A Monday in March; the shop is open from Monday to Friday.
const monday = '2027-03-01T09:20:00.000Z'
const yearsAhead = '2036-03-03T09:20:00.000Z'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop(monday, { played: false })
})
afterEach(() => shop.close())

const addOwner = () => shop.tryAct('register.addOwner', rosamund)
const doubted = async () => (await shop.view('shop')).clock
const codes = (body: { problems: { code: string }[] }) => body.problems.map(({ code }) => code)
const confirm = (today: string) => shop.act('shop.confirmClock', { today })
const rows = async () => (await shop.view('dayBook')).rows.length

describe('a computer’s clock that stands wrong', () => {
  it('before the last entry: the act is refused, the pages say why, and nothing is written', async () => {
    shop.clock.at = '2027-02-26T12:00:00.000Z'
    const { status, body } = await addOwner()
    expect([status, codes(body)]).toEqual([422, ['clock.doubtedBehind']])
    expect(await doubted()).toEqual({ doubt: 'behind', lastOn: '2027-03-01', today: '2027-02-26' })
    expect(await rows()).toBe(1)
  })

  it('years ahead: refused too, also a photograph and a trial', async () => {
    shop.clock.at = yearsAhead
    expect(codes((await addOwner()).body)).toEqual(['clock.doubtedAhead'])
    const picture = await shop.ask('/api/photographs', { method: 'PUT', body: new Uint8Array([1, 2, 3]) })
    expect(codes(picture.body)).toEqual(['clock.doubtedAhead'])
    const tried = await shop.ask('/api/register/addOwner', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'Countwheel-Trial': '1' },
      body: JSON.stringify(rosamund),
    })
    expect(codes(tried.body)).toEqual(['clock.doubtedAhead'])
  })

  it('said to be right, is gone by; said of another day, it is not', async () => {
    shop.clock.at = yearsAhead
    const other = await shop.tryAct('shop.confirmClock', { today: '2027-03-01' })
    expect(codes(other.body)).toEqual(['clock.otherDay'])
    await confirm('2036-03-03')
    expect(await doubted()).toBeNull()
    expect((await addOwner()).status).toBe(200)
  })

  it('what is typed and not yet entered is kept all the same', async () => {
    shop.clock.at = yearsAhead
    const kept = await shop.ask('/api/drafts/a1b2c3d4-e5f6', {
      method: 'PUT',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ page: 'take-in', title: '', body: { fault: 'Stops' } }),
    })
    expect(kept.status).toBe(200)
  })
})

/** An invoice written by a clock nine years ahead, found out and put right on the Tuesday. */
async function invoicedAhead() {
  shop.clock.at = yearsAhead
  await confirm('2036-03-03')
  const billed = await invoicedRepair(shop)
  await shop.act('accounts.closePeriod', { toDate: '2036-03-02' })
  shop.clock.at = '2027-03-02T10:00:00.000Z'
  await confirm('2027-03-02')
  return billed
}

describe('what was entered while the clock ran years ahead', () => {
  it('is corrected by a credit note of the true day', async () => {
    const { invoice } = await invoicedAhead()
    await shop.act('accounts.credit', { invoiceId: invoice.id, reason: 'The computer’s clock stood wrong' })
    const { rows } = await shop.view('documents?kind=credit-note')
    expect(rows).toMatchObject([{ issuedOn: '2027-03-02' }])
  })

  it('holds up neither the next invoice nor the closing of the books', async () => {
    await invoicedAhead()
    const next = await invoicedRepair(shop, {
      more: { owner: { name: 'Odalys Wren' }, clock: { form: 'wall', trains: 1 } },
    })
    expect(next.invoice.number).toBe('I0002')
    expect((await shop.view('periods')).closedTo).toBeNull()
    await shop.act('accounts.closePeriod', { toDate: '2027-03-01' })
    expect((await shop.view('periods')).closedTo).toBe('2027-03-01')
  })

  it('leaves the ledger sound', async () => {
    const { invoice } = await invoicedAhead()
    await shop.act('accounts.credit', { invoiceId: invoice.id, reason: 'The computer’s clock stood wrong' })
    const faults = [...verified({ read: shop.ledger.read, file: shop.file, migrations: places.migrations })]
    expect(faults.flatMap(check => check.faults)).toEqual([])
  })

  it('a day booked into the closed period is still refused', async () => {
    await invoicedAhead()
    await shop.act('accounts.closePeriod', { toDate: '2027-03-01' })
    const repair = await invoicedRepair(shop, {
      more: { owner: { name: 'Odalys Wren' }, clock: { form: 'wall', trains: 1 } },
    })
    const paid = { repairId: repair.id, amount: '10.00', method: 'cash', onDate: '2027-03-01' }
    expect(codes((await shop.tryAct('accounts.pay', paid)).body)).toEqual(['period.closed'])
  })
})
