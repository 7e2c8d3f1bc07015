import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { invoicedRepair } from './billed-shop.ts'
import { openTestShop, type Shop } from './handler-fixture.ts'
import { agreedRepair, refused } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const lines = (unit: string) => [{ kind: 'labour', description: 'Service', quantity: '1', unit, taxes: [] }]

/** A repair billed over 100.00 without tax. */
const owing = () => invoicedRepair(shop, { lines: lines('100.00'), more: { belongings: [] } })

const tried = async (act: string, input: unknown) => refused(await shop.tryAct(act, input))
const done = { status: 200, problems: [] }
const not = (...problems: string[]) => ({ status: 422, problems })

const pay = (repairId: number, amount: string, more: object = {}) =>
  tried('accounts.pay', { repairId, amount, method: 'card', ...more })

const handOver = (repairId: number, more: object = {}) =>
  tried('counter.handOver', { repairId, toName: 'Rosamund Pell', belongings: [], unpaidReason: '', ...more })

describe('a payment', () => {
  it('may be all that is owed and no cent more, unless the rest goes to the owner’s account', async () => {
    const { id } = await owing()
    expect(await pay(id, '100.01')).toEqual(not('payment.moreThanOwed amount'))
    expect(await pay(id, '0')).toEqual(not('payment.zero amount'))
    expect(await pay(id, '100.00')).toEqual(done)
    expect(await pay(id, '0.01')).toEqual(not('payment.moreThanOwed amount'))
    expect(await pay(id, '0.01', { restToAccount: true })).toEqual(done)
  })

  it('is covered by as much cash as is laid down, and by no cent less', async () => {
    const { id } = await owing()
    const cash = (tendered: string) => pay(id, '10.00', { method: 'cash', tendered })
    expect(await cash('9.99')).toEqual(not('payment.tooLittle tendered'))
    expect(await cash('10.00')).toEqual(done)
  })

  it('from the owner’s account may be all that is held there and no cent more, and never above what is owed', async () => {
    const { id, ownerId } = await owing()
    await pay(id, '105.00', { restToAccount: true })
    const other = await invoicedRepair(shop, {
      lines: lines('100.00'),
      more: { owner: { id: ownerId }, belongings: [] },
    })
    const fromAccount = (amount: string) => pay(other.id, amount, { method: 'account', restToAccount: true })
    expect(await fromAccount('5.01')).toEqual(not('account.notEnough amount'))
    expect(await fromAccount('100.01')).toEqual(
      not('payment.moreThanOwed amount', 'account.notEnough amount'),
    )
    expect(await fromAccount('5.00')).toEqual(done)
    expect(await fromAccount('0.01')).toEqual(not('account.notEnough amount'))
  })
})

describe('money given back', () => {
  it('may be all that is held on the repair and no cent more', async () => {
    const { id } = await agreedRepair(shop)
    await pay(id, '20.00')
    const back = (amount: string) => tried('accounts.refund', { repairId: id, amount, method: 'card' })
    expect(await back('20.01')).toEqual(not('payment.moreThanHeld amount'))
    expect(await back('0')).toEqual(not('payment.zero amount'))
    expect(await back('20.00')).toEqual(done)
    expect(await back('0.01')).toEqual(not('payment.moreThanHeld amount'))
  })

  it('from an owner’s account may be all that is held there and no cent more', async () => {
    const { id, ownerId } = await owing()
    await pay(id, '103.00', { restToAccount: true })
    const back = (amount: string) => tried('accounts.payBack', { ownerId, amount, method: 'card' })
    expect(await back('3.01')).toEqual(not('payment.moreThanHeld amount'))
    expect(await back('3.00')).toEqual(done)
    expect(await back('0.01')).toEqual(not('payment.moreThanHeld amount'))
  })
})

describe('a rest that is given up', () => {
  const giveUp = (repairId: number, amount: string) =>
    tried('accounts.writeOff', { repairId, amount, cause: 'courtesy', reason: 'An old friend' })

  it('may be all that is owed and no cent more', async () => {
    const { id } = await owing()
    expect(await giveUp(id, '100.01')).toEqual(not('writeOff.moreThanOwed amount'))
    expect(await giveUp(id, '0')).toEqual(not('payment.zero amount'))
    expect(await giveUp(id, '100.00')).toEqual(done)
    expect(await giveUp(id, '0.01')).toEqual(not('writeOff.moreThanOwed amount'))
  })

  it('is taken back once, whole', async () => {
    const { id } = await owing()
    const takeBack = () => tried('accounts.takeBackWriteOff', { repairId: id, reason: 'Paid after all' })
    expect(await takeBack()).toEqual(not('writeOff.none repairId'))
    await giveUp(id, '30.00')
    await giveUp(id, '12.00')
    expect(await takeBack()).toEqual(done)
    expect(await takeBack()).toEqual(not('writeOff.none repairId'))
    expect(await pay(id, '100.00')).toEqual(done)
  })

  it('is not credited as well: what is left of the bill may be all that was given up, and no cent less', async () => {
    const { id, invoice } = await owing()
    await giveUp(id, '30.00')
    const credit = (amount: string) =>
      tried('accounts.credit', {
        invoiceId: invoice.id,
        reason: 'Too dear',
        lines: [{ line: 0, quantity: null, amount }],
      })
    expect(await credit('70.01')).toEqual(not('credit.writtenOff lines'))
    expect(await credit('70.00')).toEqual(done)
  })
})

describe('a credit', () => {
  it('is of an invoice, and of nothing once that is credited', async () => {
    const { id, invoice } = await owing()
    const { receiptId } = await shop.act('accounts.pay', { repairId: id, amount: '1.00', method: 'card' })
    const credit = async (invoiceId: number) =>
      (await tried('accounts.credit', { invoiceId, reason: 'Wrong clock' })).problems
    expect(await credit(receiptId)).toEqual(['document.notAnInvoice invoiceId'])
    expect(await credit(invoice.id)).toEqual([])
    expect(await credit(invoice.id)).toEqual(['document.credited invoiceId'])
  })
})

describe('a hand-over', () => {
  it('needs a reason while a cent is owed, and none once all is paid', async () => {
    const { id } = await owing()
    await pay(id, '99.99')
    expect(await handOver(id)).toEqual(not('handOver.unpaid unpaidReason'))
    await pay(id, '0.01')
    expect(await handOver(id)).toEqual(done)
  })

  it('needs an authority for another name than the owner’s, however that is written', async () => {
    const { id } = await owing()
    await pay(id, '100.00')
    expect(await handOver(id, { toName: 'Rosamund Pel' })).toEqual(not('handOver.authority authority'))
    expect(await handOver(id, { toName: ' rosamund PELL ' })).toEqual(done)
  })

  it('to another with an authority is done', async () => {
    const { id } = await owing()
    await pay(id, '100.00')
    expect(await handOver(id, { toName: 'Tobias Okafor-Lind', authority: 'Letter of the owner' })).toEqual(
      done,
    )
  })

  it('accounts for every belonging, returned or with a reason, and for no other', async () => {
    const repair = await invoicedRepair(shop, { lines: lines('100.00') })
    await pay(repair.id, '100.00')
    const { belongings } = await shop.view(`repairs/${repair.number}`)
    const { id } = belongings.find((one: { custody: string }) => one.custody === 'received')
    const account = (...entries: object[]) => handOver(repair.id, { belongings: entries })
    expect((await account()).problems).toHaveLength(1)
    expect(await account({ id, returned: false, reason: '' })).toEqual(
      not('belonging.unaccounted belongings[0].returned'),
    )
    expect((await account({ id, returned: true }, { id: id + 1, returned: true })).problems).toEqual([
      'belonging.unknown belongings[1].id',
    ])
    expect(await account({ id, returned: false, reason: 'Lost by the shop' })).toEqual(done)
    const after = await shop.view(`repairs/${repair.number}`)
    expect(after.belongings.find((one: { id: number }) => one.id === id)).toMatchObject({
      returnedAt: null,
      unreturnedReason: 'Lost by the shop',
    })
  })
})

describe('cash in a shop without small coins', () => {
  beforeEach(() => shop.act('shop.changeSettings', { cash: { step: '0.05' } }))

  it('settles a debt to the nearest coin, and takes a part only as coins pay it', async () => {
    const { id } = await invoicedRepair(shop, { lines: lines('100.02'), more: { belongings: [] } })
    const cash = (amount: string) => pay(id, amount, { method: 'cash' })
    expect(await cash('10.02')).toEqual(not('payment.notInCash amount'))
    expect(await cash('10.05')).toEqual(done)
    expect(await cash('89.97')).toEqual(done)
    expect(await handOver(id)).toEqual(done)
  })

  it('leaves nothing on an owner’s account of which all was paid out', async () => {
    const { id, ownerId } = await owing()
    await pay(id, '103.02', { restToAccount: true })
    const back = (amount: string, method: string) => tried('accounts.payBack', { ownerId, amount, method })
    expect(await back('3.02', 'cash')).toEqual(done)
    expect(await back('0.01', 'card')).toEqual(not('payment.moreThanHeld amount'))
  })

  it('is paid to the cent by card', async () => {
    const { id } = await invoicedRepair(shop, { lines: lines('100.02'), more: { belongings: [] } })
    expect(await pay(id, '100.02')).toEqual(done)
  })
})
