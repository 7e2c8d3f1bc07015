import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openTestShop, type Shop } from './handler-fixture.ts'
import { agreedRepair, refused } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const spring = {
  kind: 'mainspring',
  name: 'Mainspring 19 × 0.45',
  sizes: [
    { dimension: 'height', value: '19', unit: 'mm' },
    { dimension: 'thickness', value: '0.45', unit: 'mm' },
    { dimension: 'barrel', value: '1.75', unit: 'in' },
  ],
  vendor: 'Tarn Spring Works',
  keptAt: 'Drawer 4',
  unitCost: '14.20',
  unitPrice: '36.40',
  reorderAt: 2,
}

const inStock = async (quantity: number, more = {}) => {
  const { id } = await shop.act('stores.addPart', { ...spring, ...more })
  await shop.act('stores.receive', { partId: id, quantity })
  return id as number
}

const stock = async (id: number) =>
  (await shop.view('stores')).parts.find((p: { id: number }) => p.id === id).inStock

describe('parts', () => {
  it('keep their sizes in the unit they were measured in, and their vendor by name', async () => {
    const { id } = await shop.act('stores.addPart', spring)
    const { parts, vendors } = await shop.view('stores')
    expect(parts).toMatchObject([
      { id, sizes: spring.sizes, vendor: 'Tarn Spring Works', unitCostMinor: 1420 },
    ])
    expect(vendors).toHaveLength(1)
    const taken = await shop.tryAct('stores.addVendor', { name: 'TARN spring works' })
    expect(refused(taken).problems).toEqual(['vendor.nameTaken name'])
  })

  it.each([
    [{ sizes: [spring.sizes[0], spring.sizes[0]] }, 'size.twice sizes[1].dimension'],
    [{ sizes: [{ dimension: 'height', value: '0', unit: 'mm' }] }, 'number.notPositive sizes[0].value'],
    [{ sizes: [{ dimension: 'height', value: '19', unit: 'ligne' }] }, 'input.notOneOf sizes[0].unit'],
    [{ unitCost: '1.234' }, 'money.tooPrecise unitCost'],
    [{ unitPrice: '-1' }, 'number.negative unitPrice'],
    [{ reorderAt: -1 }, 'input.tooSmall reorderAt'],
    [{ vendorId: 77 }, 'vendor.unknown vendorId'],
    [{ name: ' ' }, 'input.required name'],
  ])('with %o are refused: %s', async (wrong, problem) => {
    expect(refused(await shop.tryAct('stores.addPart', { ...spring, ...wrong })).problems).toEqual([problem])
    expect((await shop.view('stores')).parts).toEqual([])
  })

  it('a mainspring keeps how its ends are made; another part has none', async () => {
    const { id } = await shop.act('stores.addPart', { ...spring, ends: 'hole' })
    expect((await shop.view(`parts/${id}`)).part.ends).toBe('hole')
    const { id: other } = await shop.act('stores.addPart', { ...spring, kind: 'line', ends: 'loop' })
    expect((await shop.view(`parts/${other}`)).part.ends).toBe('')
    const answer = await shop.tryAct('stores.addPart', { ...spring, ends: 'knot' })
    expect(refused(answer).problems).toEqual(['input.notOneOf ends'])
  })

  it('that changed leave what was used before at its own price', async () => {
    const repair = await agreedRepair(shop)
    const partId = await inStock(5)
    await shop.act('bench.usePart', { repairId: repair.id, partId, quantity: 2 })
    await shop.act('stores.changePart', { ...spring, partId, unitPrice: '40.00' })
    await shop.act('bench.usePart', { repairId: repair.id, partId })
    const { parts } = (await shop.view('repairs/2201')).bench
    expect(parts.rows.map((r: { unitPriceMinor: number }) => r.unitPriceMinor)).toEqual([3640, 4000])
    expect(parts.priceMinor).toBe(2 * 3640 + 4000)
  })
})

describe('stock', () => {
  it('never falls below nothing', async () => {
    const repair = await agreedRepair(shop)
    const partId = await inStock(1)
    const use = { repairId: repair.id, partId, quantity: 2 }
    const answer = await shop.tryAct('bench.usePart', use)
    expect(refused(answer)).toEqual({ status: 422, problems: ['part.notEnough quantity'] })
    expect(answer.body.problems[0].message).toBe('Only 1 in stock.')
    expect(await stock(partId)).toBe(1)
  })

  it('takes back no more than is on the repair, at the price it was used for', async () => {
    const repair = await agreedRepair(shop)
    const partId = await inStock(5)
    const use = await shop.act('bench.usePart', { repairId: repair.id, partId, quantity: 3 })
    await shop.act('bench.putBack', { moveId: use.id, quantity: 2, reason: 'Too strong' })
    expect(await stock(partId)).toBe(4)
    const more = await shop.tryAct('bench.putBack', { moveId: use.id, quantity: 2 })
    expect(refused(more).problems).toEqual(['part.notUsed quantity'])
    const { parts } = (await shop.view('repairs/2201')).bench
    expect(parts).toMatchObject({ priceMinor: 3640, rows: [{ taken: 3, quantity: 1 }] })
    const { moves } = await shop.view(`parts/${partId}`)
    const notAUse = await shop.tryAct('bench.putBack', { moveId: moves.at(-1).id })
    expect(refused(notAUse).problems).toEqual(['move.notAUse moveId'])
  })

  it('is put right by a count that says why, and tells its whole history', async () => {
    const partId = await inStock(5)
    expect(await shop.act('stores.count', { partId, counted: 4, note: 'One was bent' })).toMatchObject({
      difference: -1,
    })
    const same = await shop.tryAct('stores.count', { partId, counted: 4, note: 'x' })
    expect(refused(same).problems).toEqual(['part.countUnchanged counted'])
    const { moves } = await shop.view(`parts/${partId}`)
    expect(
      moves.map((m: { kind: string; quantity: number; after: number }) => [m.kind, m.quantity, m.after]),
    ).toEqual([
      ['counted', -1, 4],
      ['received', 5, 5],
    ])
  })

  it('is worth what it cost', async () => {
    await inStock(3)
    await inStock(2, { name: 'Line', unitCost: '1.50' })
    expect((await shop.view('stores')).valueMinor).toBe(3 * 1420 + 2 * 150)
  })
})

describe('orders', () => {
  it('stand until they arrive, late after their day, and take what came into stock at its new cost', async () => {
    const repair = await agreedRepair(shop)
    const partId = await inStock(1)
    expect((await shop.view('stores')).counts).toMatchObject({ toOrder: 1, onOrder: 0 })
    const order = { partId, quantity: 5, dueOn: '2027-03-05', repairId: repair.id }
    const { id } = await shop.act('stores.order', order)
    shop.clock.at = '2027-03-06T09:00:00.000Z'
    expect(await shop.view('stores')).toMatchObject({
      counts: { toOrder: 0, onOrder: 1, overdue: 1 },
      orders: [{ vendor: 'Tarn Spring Works', repairNumber: 2201, overdue: true }],
    })
    await shop.act('stores.arrive', { orderId: id, quantity: 4, unitCost: '15.00' })
    const { parts, orders } = await shop.view('stores')
    expect(orders).toEqual([])
    expect(parts[0]).toMatchObject({ inStock: 5, unitCostMinor: 1500, toOrder: false })
    const again = await shop.tryAct('stores.arrive', { orderId: id })
    expect(refused(again).problems).toEqual(['order.arrived orderId'])
  })
})

it('what is not there is said with 404, what is misspelt with its field', async () => {
  const nowhere = await shop.tryAct('stores.receive', { partId: 9, quantity: 1 })
  expect(refused(nowhere)).toEqual({ status: 404, problems: ['part.unknown partId'] })
  const wrong = await shop.tryAct('stores.order', { partId: 0, quantity: 0, dueOn: '2027-02-30' })
  expect(refused(wrong).problems).toEqual([
    'input.tooSmall partId',
    'input.tooSmall quantity',
    'input.notADate dueOn',
  ])
  expect((await shop.ask('/api/pages/parts/zero')).status).toBe(422)
  expect((await shop.ask('/api/pages/parts/7')).status).toBe(404)
})
