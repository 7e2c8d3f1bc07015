import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { estimateLines, openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

/** Rosamund's clock up to its invoice of 475.68. */
async function invoiced() {
  const repair = await takeInPell(shop)
  const estimate = await shop.act('estimates.write', { repairId: repair.id, lines: estimateLines })
  await shop.act('estimates.send', { estimateId: estimate.id, way: 'in-person' })
  await shop.act('estimates.recordWord', {
    estimateId: estimate.id,
    answer: 'go-ahead',
    who: 'Rosamund Pell',
    way: 'in-person',
  })
  await shop.act('bench.declareReady', { repairId: repair.id, reason: 'Tested before' })
  const { invoiceLines } = await shop.view('repairs/2201')
  const invoice = await shop.act('accounts.invoice', { repairId: repair.id, lines: invoiceLines })
  return { repair, invoice }
}

describe('papers', () => {
  it('are leafed through from the newest to the oldest and back, also those of one kind', async () => {
    const { id } = await takeInPell(shop)
    for (let i = 0; i < 120; i++)
      await shop.act('accounts.pay', { repairId: id, amount: '1.00', method: 'cash' })
    const first = await shop.view('documents?kind=receipt')
    const second = await shop.view(`documents?kind=receipt&before=${first.rows.at(-1).id}`)
    expect([first, second].map(page => [page.rows.length, page.previous, page.next])).toEqual([
      [100, false, true],
      [20, true, false],
    ])
    expect(first.rows[0].number).toBe('R0120')
    expect(second.rows.at(-1).number).toBe('R0001')
    expect(await shop.view(`documents?kind=receipt&after=${second.rows[0].id}`)).toEqual(first)
    expect((await shop.view('documents?kind=warranty')).rows).toEqual([])
  })

  it('are shown one by one with what they say, and an invoice with the credit note that took it back', async () => {
    const { invoice } = await invoiced()
    const before = await shop.view(`documents/${invoice.id}`)
    expect(before).toMatchObject({
      paper: { kind: 'invoice', number: 'I0001', repairNumber: 2201, totalMinor: 47568 },
      contents: { kind: 'invoice', owner: { name: 'Rosamund Pell' }, priced: { taxInclusive: 47568 } },
      corrects: null,
      correctedBy: [],
    })
    const credit = await shop.act('accounts.credit', { invoiceId: invoice.id, reason: 'Wrong owner' })
    const after = await shop.view(`documents/${invoice.id}`)
    expect(after.contents).toEqual(before.contents)
    expect(after.correctedBy).toMatchObject([{ id: credit.id, kind: 'credit-note', number: 'C0001' }])
    expect((await shop.view(`documents/${credit.id}`)).corrects).toMatchObject({ number: 'I0001' })
    expect((await shop.ask('/api/pages/documents/999')).status).toBe(404)
  })
})

describe('what is owed and received', () => {
  it('is owed since the day of the invoice, for so many days by now', async () => {
    await invoiced()
    shop.clock.at = '2027-03-11T08:00:00.000Z'
    expect(await shop.view('owed')).toMatchObject({
      rows: [{ number: 2201, sinceOn: '2027-03-01', days: 10, dueMinor: 47568 }],
      owedMinor: 47568,
      heldMinor: 0,
    })
  })

  it('adds up by way of paying what came in less what went out', async () => {
    const { id } = await takeInPell(shop)
    await shop.act('accounts.pay', { repairId: id, amount: '50.00', method: 'cash' })
    await shop.act('accounts.pay', { repairId: id, amount: '30.00', method: 'card' })
    await shop.act('accounts.refund', { repairId: id, amount: '20.00', method: 'cash' })
    expect(await shop.view('payments?from=2027-03-01&to=2027-03-31')).toMatchObject({
      rows: [{ receiptNumber: 'R0001' }, { receiptNumber: 'R0002' }, { receiptNumber: 'R0003' }],
      byMethod: [
        { method: 'card', amountMinor: 3000 },
        { method: 'cash', amountMinor: 3000 },
      ],
      totalMinor: 6000,
    })
  })
})

describe('the day book', () => {
  it('says of each act what it was about, at the time of the shop’s own clock', async () => {
    shop.clock.at = '2027-07-01T23:30:00.000Z'
    const { repair, invoice } = await invoiced()
    await shop.act('register.changeClock', {
      clockId: repair.clockId,
      form: 'bracket',
      trains: 3,
      power: 'spring',
      duration: '8-day',
    })
    await shop.act('shop.addPerson', { name: 'Bram Tolland' })
    const { rows } = await shop.view('dayBook')
    const of = (act: string) => rows.find((row: { act: string }) => row.act === act)
    // British summer time is an hour ahead of UTC: it is past midnight in the shop.
    expect(of('counter.takeIn')).toMatchObject({
      local: '2027-07-02T00:30',
      repairNumber: 2201,
      ownerName: 'Rosamund Pell',
    })
    expect(of('estimates.write')).toMatchObject({ repairNumber: 2201 })
    expect(of('accounts.invoice')).toMatchObject({
      paperId: invoice.id,
      paperKind: 'invoice',
      paperNumber: 'I0001',
      repairNumber: 2201,
    })
    expect(of('register.changeClock')).toMatchObject({ clockId: repair.clockId, form: 'bracket' })
    expect(of('shop.addPerson')).toMatchObject({ thing: 'Bram Tolland', person: 'Ines Marrow' })
  })
})
