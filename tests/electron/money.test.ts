import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { invoicedRepair, mixedLines } from './billed-shop.ts'
import { openTestShop, type Shop, takeInPell, testSettings } from './handler-fixture.ts'
import { agreedRepair, refused } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const pay = (repairId: number, amount: string, more: Record<string, unknown> = {}) =>
  shop.tryAct('accounts.pay', { repairId, amount, method: 'card', ...more })

const money = async (number: number) => (await shop.view(`repairs/${number}`)).money

describe('an invoice', () => {
  it('is credited line by line until nothing is left, and not once more', async () => {
    const { invoice } = await invoicedRepair(shop)
    const credit = (lines: unknown) =>
      shop.tryAct('accounts.credit', { invoiceId: invoice.id, reason: 'Shared with the case maker', lines })
    const half = await credit([{ line: 0, quantity: '2.5' }])
    expect(half.body).toMatchObject({ number: 'C0001', totalMinor: -14_400 })
    expect((await credit([{ line: 1, amount: '6.40' }])).body.totalMinor).toBe(-768)
    expect(refused(await credit([{ line: 0, quantity: '5.5' }]))).toEqual({
      status: 422,
      problems: ['credit.quantityLeft lines[0].quantity'],
    })
    const { creditable, correctedBy } = await shop.view(`documents/${invoice.id}`)
    expect(creditable).toEqual([
      { quantity: '5', amount: 24_000 },
      { quantity: '1', amount: 3000 },
    ])
    expect(correctedBy).toHaveLength(2)
    const rest = await credit(null)
    expect(rest.body.totalMinor).toBe(-(invoice.totalMinor - 14_400 - 768))
    expect(refused(await credit(null)).problems).toEqual(['document.credited invoiceId'])
    expect((await money(2201)).balance).toMatchObject({ billed: 0, due: 0 })
  })

  it('credited whole takes back a surcharge on a line too', async () => {
    const lines = mixedLines.map((line, i) => (i === 0 ? { ...line, charge: '10.00' } : line))
    const { invoice } = await invoicedRepair(shop, { lines })
    const credit = await shop.act('accounts.credit', { invoiceId: invoice.id, reason: 'Wrong owner' })
    expect(credit.totalMinor).toBe(-invoice.totalMinor)
  })

  it('written anew after a whole credit counts what was paid on the first', async () => {
    const { id, invoice, number } = await invoicedRepair(shop)
    await shop.act('accounts.pay', { repairId: id, amount: '475.68', method: 'card' })
    await shop.act('accounts.credit', { invoiceId: invoice.id, reason: 'Wrong name' })
    const { invoiceLines } = await shop.view(`repairs/${number}`)
    const again = await shop.act('accounts.invoice', { repairId: id, lines: invoiceLines })
    expect(again.dueMinor).toBe(0)
    expect((await money(number)).balance.due).toBe(0)
  })

  it('is not issued before the last one, nor is a credit note on a day to come', async () => {
    shop.clock.at = '2027-03-05T09:00:00.000Z'
    const { invoice } = await invoicedRepair(shop)
    const second = await agreedRepair(shop)
    await shop.act('bench.declareReady', { repairId: second.id, reason: 'Tested before' })
    const early = { repairId: second.id, lines: mixedLines, issuedOn: '2027-03-04' }
    expect(refused(await shop.tryAct('accounts.invoice', early)).problems).toEqual([
      'document.earlier issuedOn',
    ])
    const credit = { invoiceId: invoice.id, reason: 'x', issuedOn: '2027-03-06' }
    expect(refused(await shop.tryAct('accounts.credit', credit)).problems).toEqual(['date.inFuture issuedOn'])
  })
})

describe('a payment', () => {
  it('larger than owed is refused, unless the rest goes to the owner’s account; it pays another invoice, and is paid back', async () => {
    const first = await invoicedRepair(shop)
    expect(refused(await pay(first.id, '500.00'))).toEqual({
      status: 422,
      problems: ['payment.moreThanOwed amount'],
    })
    const { body } = await pay(first.id, '1000.00', { restToAccount: true })
    expect(body).toMatchObject({ dueMinor: 0, toAccountMinor: 52_432, amountMinor: 100_000 })
    const owner = `ownerAccounts/${first.ownerId}?from=2027-01-01&to=2027-12-31`
    expect(await shop.view(owner)).toMatchObject({ heldMinor: 52_432, balance: -52_432, open: [] })
    expect(await shop.view('owed')).toMatchObject({ heldMinor: 52_432, owedMinor: 0 })

    const second = await invoicedRepair(shop, { more: { owner: { id: first.ownerId } } })
    await pay(second.id, '475.68', { method: 'account' })
    expect((await money(second.number)).balance.due).toBe(0)
    const back = (amount: string) =>
      shop.tryAct('accounts.payBack', { ownerId: first.ownerId, amount, method: 'transfer' })
    expect(refused(await back('48.65')).problems).toEqual(['payment.moreThanHeld amount'])
    expect((await back('48.64')).body).toMatchObject({ amountMinor: -4864, dueMinor: 0 })
    expect(await shop.view(owner)).toMatchObject({ heldMinor: 0, balance: 0 })
    const received = await shop.view('payments?from=2027-01-01&to=2027-12-31')
    expect(received.totalMinor).toBe(100_000 - 4864)
  })

  it('from an owner’s account is at most what is held there', async () => {
    const { id } = await invoicedRepair(shop)
    expect(refused(await pay(id, '1.00', { method: 'account' })).problems).toEqual([
      'account.notEnough amount',
    ])
  })

  it('given back is at most what is held, and may go to the owner’s account instead', async () => {
    const { id, number, ownerId } = await takeInPell(shop)
    await pay(id, '50.00')
    const refund = (amount: string, method: string) =>
      shop.tryAct('accounts.refund', { repairId: id, amount, method })
    expect(refused(await refund('50.01', 'cash')).problems).toEqual(['payment.moreThanHeld amount'])
    await refund('50.00', 'account')
    expect(await money(number)).toMatchObject({ balance: { due: 0 }, accountMinor: 5000 })
    expect((await shop.view('owed')).accounts).toMatchObject([{ owner: { id: ownerId }, heldMinor: 5000 }])
  })

  it('on an account is found again under the owner a duplicate was merged into', async () => {
    const { id, ownerId } = await takeInPell(shop)
    await pay(id, '50.00')
    await shop.act('accounts.refund', { repairId: id, amount: '50.00', method: 'account' })
    const into = await shop.act('register.addOwner', { name: 'Petra Wick' })
    await shop.act('register.mergeOwners', { ownerId, intoId: into.id })
    expect((await shop.view('owed')).accounts).toMatchObject([{ owner: { id: into.id }, heldMinor: 5000 }])
    await shop.act('accounts.payBack', { ownerId: into.id, amount: '50.00', method: 'card' })
    expect((await shop.view('owed')).accounts).toEqual([])
  })

  it('says the change, and by how much a deposit passes what was agreed', async () => {
    const { id, number } = await invoicedRepair(shop)
    const { body } = await pay(id, '475.68', { method: 'cash', tendered: '480.00' })
    expect(body).toMatchObject({ changeMinor: 432, billed: true })
    expect(number).toBe(2201)
    const repair = await takeInPell(shop, {
      clock: { form: 'wall', trains: 1, power: 'spring', duration: '8-day' },
    })
    const estimate = await shop.act('estimates.write', {
      repairId: repair.id,
      lines: [{ kind: 'labour', description: 'Clean', quantity: '1', unit: '100' }],
    })
    expect(estimate.totalMinor).toBe(12_000)
    expect((await pay(repair.id, '130.00')).body).toMatchObject({ billed: false, aboveQuotedMinor: 1000 })
  })
})

describe('cash', () => {
  it('is rounded to the shop’s coins when the whole is paid, and the difference is a record of its own', async () => {
    await shop.act('shop.changeSettings', { cash: { step: '0.05' } })
    const { id, number } = await invoicedRepair(shop)
    expect(refused(await pay(id, '10.03', { method: 'cash' })).problems).toEqual(['payment.notInCash amount'])
    await pay(id, '10.05', { method: 'cash' })
    const { body } = await pay(id, '465.63', { method: 'cash', tendered: '470.00' })
    expect(body).toMatchObject({ amountMinor: 46_565, changeMinor: 435, dueMinor: 0 })
    expect(await money(number)).toMatchObject({
      balance: { rounded: -2, due: 0 },
      writeOffs: [{ kind: 'rounding', amountMinor: -2 }],
    })
    const { rows } = await shop.view('account?name=rounding&from=2027-01-01&to=2027-12-31')
    expect(rows).toMatchObject([{ amountMinor: -2, balanceMinor: -2 }])
  })
})

describe('an open rest', () => {
  it('is written off with its cause and reason, at most all of it, and the invoice stays', async () => {
    const { id, number, invoice } = await invoicedRepair(shop)
    await pay(id, '400.00')
    const writeOff = (amount: string) =>
      shop.tryAct('accounts.writeOff', { repairId: id, amount, cause: 'courtesy', reason: 'Scratched by us' })
    expect(refused(await writeOff('75.69')).problems).toEqual(['writeOff.moreThanOwed amount'])
    expect((await writeOff('75.68')).body.dueMinor).toBe(0)
    expect((await shop.view(`documents/${invoice.id}`)).paper.totalMinor).toBe(47_568)
    const credit = () => shop.tryAct('accounts.credit', { invoiceId: invoice.id, reason: 'After all' })
    expect(refused(await credit()).problems).toEqual(['credit.writtenOff lines'])
    await shop.act('accounts.takeBackWriteOff', { repairId: id, reason: 'She pays after all' })
    expect((await money(number)).balance).toMatchObject({ writtenOff: 0, due: 7568 })
    expect(
      refused(await shop.tryAct('accounts.takeBackWriteOff', { repairId: id, reason: 'x' })).problems,
    ).toEqual(['writeOff.none repairId'])
    expect((await credit()).status).toBe(200)
  })

  it('written off leaves the tax of the invoice due with it, and counts none as paid', async () => {
    const { id } = await invoicedRepair(shop)
    await pay(id, '237.84')
    await shop.act('accounts.writeOff', {
      repairId: id,
      amount: '237.84',
      cause: 'bad-debt',
      reason: 'Gone away',
    })
    const tax = async (due: 'invoice' | 'payment') => {
      await shop.act('shop.changeSettings', { tax: { ...testSettings.tax, due } })
      return (await shop.view('tax?from=2027-01-01&to=2027-12-31')).taxMinor
    }
    expect(await tax('invoice')).toBe(7928)
    expect(await tax('payment')).toBe(3964)
  })
})

describe('the cash drawer', () => {
  it('is counted against the entries since the last count, with a remark where they differ', async () => {
    const { id } = await takeInPell(shop)
    await pay(id, '100.00', { method: 'cash' })
    await pay(id, '30.00')
    const count = (counted: string, more = {}) => shop.tryAct('accounts.countDrawer', { counted, ...more })
    expect(refused(await count('99.00')).problems).toEqual(['drawer.remark remark'])
    expect((await count('99.00', { remark: 'A pound short', taken: '80.00' })).body).toMatchObject({
      expectedMinor: 10_000,
      differenceMinor: -100,
    })
    await shop.act('accounts.refund', { repairId: id, amount: '5.00', method: 'cash' })
    expect((await shop.view('drawer')).expectedMinor).toBe(9900 - 8000 - 500)
    expect(refused(await count('14.00', { taken: '15.00' })).problems).toEqual(['drawer.takenMore taken'])
    expect((await count('14.00')).body.differenceMinor).toBe(0)
    const cash = await shop.view('account?name=cash&from=2027-01-01&to=2027-12-31')
    expect(cash.afterMinor).toBe(1400)
  })
})

describe('a closed period', () => {
  it('takes no payment, invoice, credit note or write-off dated into it, names the day, and only grows', async () => {
    const { id, invoice } = await invoicedRepair(shop)
    shop.clock.at = '2027-03-20T09:00:00.000Z'
    const close = (toDate: string) => shop.tryAct('accounts.closePeriod', { toDate })
    expect(refused(await close('2027-03-20')).problems).toEqual(['period.notOver toDate'])
    await close('2027-03-10')
    expect(refused(await close('2027-03-10')).problems).toEqual(['period.alreadyClosed toDate'])
    const onDate = '2027-03-10'
    const late = await pay(id, '10.00', { onDate })
    expect(refused(late)).toEqual({ status: 422, problems: ['period.closed onDate'] })
    expect(late.body.problems[0].message).toContain('2027-03-10')
    const credit = { invoiceId: invoice.id, reason: 'x', issuedOn: onDate }
    expect(refused(await shop.tryAct('accounts.credit', credit)).problems).toEqual(['period.closed issuedOn'])
    const writeOff = { repairId: id, amount: '1.00', cause: 'courtesy', reason: 'x', onDate }
    expect(refused(await shop.tryAct('accounts.writeOff', writeOff)).problems).toEqual([
      'period.closed onDate',
    ])
    const other = await takeInPell(shop, {
      clock: { form: 'wall', trains: 1, power: 'spring', duration: '8-day' },
    })
    expect(refused(await pay(other.id, '1.00', { onDate: '2027-03-21' })).problems).toEqual([
      'date.inFuture onDate',
    ])
    expect((await pay(id, '10.00', { onDate: '2027-03-11' })).status).toBe(200)
    expect(await shop.view('periods')).toMatchObject({
      closedTo: '2027-03-10',
      rows: [{ toDate: '2027-03-10' }],
    })
  })

  it('takes no invoice and no count of the drawer on a day in it, as when the computer’s clock is behind', async () => {
    shop.clock.at = '2027-03-20T09:00:00.000Z'
    await shop.act('accounts.closePeriod', { toDate: '2027-03-19' })
    shop.clock.at = '2027-03-19T09:00:00.000Z'
    expect(refused(await shop.tryAct('accounts.countDrawer', { counted: '0' })).problems).toEqual([
      'period.closed onDate',
    ])
    await expect(invoicedRepair(shop)).rejects.toThrow('period.closed')
  })
})

describe('the currency', () => {
  it('is changed while nothing is written in it, and not after', async () => {
    const euro = { place: { ...testSettings.place, currency: 'EUR' } }
    await shop.act('shop.changeSettings', euro)
    await shop.act('shop.changeSettings', { place: testSettings.place })
    await takeInPell(shop)
    const answer = await shop.tryAct('shop.changeSettings', euro)
    expect(refused(answer)).toEqual({ status: 422, problems: ['place.currencyInUse place.currency'] })
    expect(answer.body.problems[0].message).toContain('GBP')
  })
})
