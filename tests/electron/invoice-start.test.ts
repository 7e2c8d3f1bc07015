import { afterEach, beforeEach, expect, it } from 'vitest'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
let repair: { id: number }
let spring: { id: number }
let line: { id: number }

const addPart = (name: string, unitPrice: string) =>
  shop.act('stores.addPart', { kind: 'mainspring', name, unitCost: '9.00', unitPrice })

beforeEach(async () => {
  shop = await openTestShop()
  repair = await takeInPell(shop)
  spring = await addPart('Mainspring', '20.00')
  line = await addPart('Gut line', '5.00')
  for (const { id } of [spring, line])
    await shop.act('stores.receive', { partId: id, quantity: 5, unitCost: '9.00' })
  const written = await shop.act('estimates.write', {
    repairId: repair.id,
    lines: [
      { kind: 'labour', description: 'Overhaul', quantity: '5', unit: '48.00' },
      { kind: 'part', description: 'Mainspring', quantity: '1', unit: '19.00', partId: spring.id },
    ],
  })
  await shop.act('estimates.send', { estimateId: written.id, way: 'letter' })
  const word = { estimateId: written.id, answer: 'go-ahead', who: 'Rosamund Pell', way: 'letter' }
  await shop.act('estimates.recordWord', word)
})
afterEach(() => shop.close())

const use = (partId: number, quantity = 1) =>
  shop.act('bench.usePart', { repairId: repair.id, partId, quantity })

const start = async () => {
  const { invoice } = await shop.view('repairs/2201')
  const named = ({ description, quantity, unit }: Record<string, string>) =>
    `${quantity} ${description} ${unit}`
  return {
    agreed: invoice.agreed.map(named),
    used: invoice.used.map(named),
    left: invoice.left.map((one: { reason: string; line: Record<string, string> }) => [
      one.reason,
      named(one.line),
    ]),
  }
}

const agreed = ['5 Overhaul 48.00', '1 Mainspring 19.00']

it('begins with what is agreed; the agreed part, used, is not billed again', async () => {
  await use(spring.id)
  expect(await start()).toEqual({ agreed, used: [], left: [] })
})

it('adds what was used beyond it at the price of that day, as long as the go-ahead reaches', async () => {
  await use(line.id, 2)
  await shop.act('stores.changePart', {
    partId: line.id,
    kind: 'mainspring',
    name: 'Gut line',
    unitCost: '9.00',
    unitPrice: '8.00',
  })
  // Agreed 310.80, at most 341.88 (10 % more): 240.00 + 19.00 + 10.00 with 20 % is 322.80; 16.00 more pass it.
  expect(await start()).toEqual({ agreed, used: ['2 Gut line 5.00'], left: [] })
})

it('takes no part, and sends no work out at a price, beyond what the owner agreed to and the margin on it', async () => {
  await use(line.id, 2)
  const part = { repairId: repair.id, partId: spring.id, quantity: 3 }
  const refused = await shop.tryAct('bench.usePart', part)
  expect(refused.body.problems[0]).toMatchObject({
    code: 'limit.part',
    field: 'atShopsCost',
    message: expect.stringMatching(/370\.80.*310\.80.*341\.88/),
  })
  const out = {
    repairId: repair.id,
    vendor: 'Lowmere Turners',
    work: 'repair',
    description: 'Arbor',
    price: '20.00',
  }
  expect((await shop.tryAct('bench.sendOut', out)).body.problems[0]).toMatchObject({
    code: 'limit.outside',
    field: 'price',
  })
  expect((await start()).used).toEqual(['2 Gut line 5.00'])
  await shop.act('bench.sendOut', { ...out, price: null })
  await shop.act('bench.usePart', { ...part, atShopsCost: true })
  expect((await start()).used).toEqual(['2 Gut line 5.00', '2 Mainspring 0.00'])
})

it('passes an agreed estimate by the margin, and a sum the owner named not at all', async () => {
  const view = await shop.view('repairs/2201')
  expect(view.limit).toEqual({ agreedMinor: 31080, mostMinor: 34188 })
  await shop.act('estimates.recordWord', {
    estimateId: view.estimates[0].id,
    answer: 'go-ahead',
    who: 'The owner',
    way: 'telephone',
    limit: '320.00',
  })
  expect((await shop.view('repairs/2201')).limit).toEqual({ agreedMinor: 32000, mostMinor: 32000 })
})

it('takes the part once the owner has agreed to more', async () => {
  const part = { repairId: repair.id, partId: spring.id, quantity: 4 }
  expect((await shop.tryAct('bench.usePart', part)).body.problems[0].code).toBe('limit.part')
  const { estimates } = await shop.view('repairs/2201')
  await shop.act('estimates.recordWord', {
    estimateId: estimates[0].id,
    answer: 'go-ahead',
    who: 'The owner',
    way: 'telephone',
    limit: '500.00',
  })
  await shop.act('bench.usePart', part)
  expect((await start()).used).toEqual(['3 Mainspring 20.00'])
})

it('proposes lines that the invoice takes as they are', async () => {
  await use(line.id)
  await shop.act('bench.declareReady', { repairId: repair.id, reason: 'Tested before' })
  const { invoiceLines } = await shop.view('repairs/2201')
  const invoice = await shop.act('accounts.invoice', { repairId: repair.id, lines: invoiceLines })
  expect(invoice.totalMinor).toBe((24000 + 1900 + 500) * 1.2)
})
