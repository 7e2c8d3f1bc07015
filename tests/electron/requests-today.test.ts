import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { estimateLines, openTestShop, type Shop, takeInPell } from './handler-fixture.ts'
import { agreedRepair, another, workedRepair } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const numbers = (rows: { number: number }[]) => rows.map(row => row.number)

describe('the turn of the day', () => {
  it('of a quiet shop is empty', async () => {
    const { today, ...lists } = await shop.view('today')
    expect(today).toBe('2027-03-01')
    for (const rows of Object.values(lists)) expect(rows).toEqual([])
  })

  it('has the estimates to send, and from the next day on the owners to ask for their word', async () => {
    const lines = estimateLines
    const asked = await takeInPell(shop)
    const estimate = await shop.act('estimates.write', { repairId: asked.id, lines })
    expect(numbers((await shop.view('today')).toSend)).toEqual([2201])
    await shop.act('estimates.send', { estimateId: estimate.id, way: 'in-person' })
    const found = await agreedRepair(shop, another)
    const finding = { component: 'movement', text: 'Third wheel cracked', needsWord: true }
    shop.clock.at = '2027-03-01T11:00:00.000Z'
    await shop.act('bench.find', { repairId: found.id, ...finding })
    expect(await shop.view('today')).toMatchObject({ toSend: [], toAsk: [] })
    shop.clock.at = '2027-03-02T09:20:00.000Z'
    expect(numbers((await shop.view('today')).toAsk)).toEqual([2201, 2202])
  })

  it('has the repairs that wait for parts which are in, once all that was ordered for them has come', async () => {
    const { id: repairId } = await agreedRepair(shop)
    const { id: partId } = await shop.act('stores.addPart', { kind: 'line', name: 'Gut line' })
    const orders = [
      await shop.act('stores.order', { partId, repairId, quantity: 1 }),
      await shop.act('stores.order', { partId, repairId, quantity: 2 }),
    ]
    await shop.act('bench.wait', { repairId, reason: 'parts' })
    const partsIn = async () => numbers((await shop.view('today')).partsIn)
    shop.clock.at = '2027-03-02T09:20:00.000Z'
    await shop.act('stores.arrive', { orderId: orders[0].id })
    expect(await partsIn()).toEqual([])
    await shop.act('stores.arrive', { orderId: orders[1].id })
    expect(await partsIn()).toEqual([2201])
    expect((await shop.view('counter')).rows).toMatchObject([{ number: 2201, group: 'parts-in' }])
  })

  it('says what to wind and read, order and chase, estimate and hand over', async () => {
    const running = await workedRepair(shop, { estimatedOn: '2027-03-02' })
    const { id: placeId } = await shop.act('shop.addPlace', { name: 'Shelf A1', kind: 'shelf' })
    await shop.act('shelf.startRunIn', { repairId: running.id, placeId })
    const away = await agreedRepair(shop, { ...another, estimatedOn: '2027-05-01' })
    const sent = { repairId: away.id, vendor: 'Lockgate Dials', description: 'Enamel', dueOn: '2027-03-02' }
    await shop.act('bench.sendOut', sent)
    const ready = await agreedRepair(shop, { ...another, owner: { name: 'H. Vantongeren' } })
    await shop.act('bench.declareReady', { repairId: ready.id, reason: 'Case repair only' })
    await takeInPell(shop, { ...another, owner: { name: 'P. Quill' } })
    const part = { kind: 'line', name: 'Gut line', reorderAt: 4 }
    const { id: partId } = await shop.act('stores.addPart', part)
    const second = await shop.act('stores.addPart', { ...part, name: 'Cable' })
    await shop.act('stores.order', { partId, quantity: 10, dueOn: '2027-03-02' })
    await shop.act('bench.startLabour', { repairId: away.id, task: 'strip' })
    shop.clock.at = '2027-03-02T09:20:00.000Z'
    const today = await shop.view('today')
    expect(numbers(today.round)).toEqual([2201])
    expect(numbers(today.late)).toEqual([2201])
    expect(today.outsideLate).toMatchObject([{ number: 2202, vendor: 'Lockgate Dials', overdue: false }])
    expect(numbers(today.toCollect)).toEqual([2203])
    expect(numbers(today.toEstimate)).toEqual([2204])
    expect(numbers(today.forgotten)).toEqual([2202])
    expect(today.ordersLate).toMatchObject([{ partId }])
    expect(today.toOrder).toMatchObject([{ id: second.id }])
  })
})
