import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openTestShop, rosamund, type Shop, testSettings } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const codes = (body: { problems: { code: string; field: string }[] }) =>
  body.problems.map(({ code, field }) => `${code} ${field}`.trim())
/** An act as a page sends it, with what was seen, and nothing added. */
const send = (act: string, input: object) =>
  shop.ask(`/api/${act.replace('.', '/')}`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', 'Countwheel-Person': String(shop.clock.person) },
    body: JSON.stringify(input),
  })

describe('an act that overwrites', () => {
  it.each([
    ['register.changeOwner', { ownerId: 1, name: 'A' }],
    ['register.changeClock', { clockId: 1, form: 'wall' }],
    ['register.measureClock', { clockId: 1 }],
    ['register.passClock', { clockId: 1, ownerId: 1 }],
    ['shop.changeSettings', { collection: { uncollectedDays: 90 } }],
    ['shop.setPersonActive', { personId: 1, active: true }],
    ['shop.changePerson', { personId: 1, roles: ['owner'] }],
    ['stores.changePart', { partId: 1, kind: 'line', name: 'Gut' }],
    ['stores.changeVendor', { vendorId: 1, name: 'V' }],
    ['shelf.describePlace', { placeId: 1 }],
    ['counter.estimateDate', { repairId: 1 }],
    ['counter.decideCover', { repairId: 1, covered: true }],
    ['register.preferContact', { contactId: 1 }],
    ['shelf.pass', { runId: 1 }],
    ['estimates.write', { repairId: 1, lines: [] }],
    ['estimates.recordWord', { estimateId: 1, answer: 'declined', who: 'R', way: 'letter' }],
  ])('%s must say what its writer has seen', async (act, input) => {
    const { body } = await send(act, input)
    expect(codes(body)).toContain('input.required seen')
  })

  it('on a group of settings is refused where somebody else changed it since, with who and when', async () => {
    const seen = { collection: (await shop.view('shop')).stamps.collection }
    const change = (uncollectedDays: number, stamps: object) =>
      send('shop.changeSettings', { collection: { uncollectedDays }, seen: stamps })
    shop.clock.at = '2027-03-01T11:00:00.000Z'
    const first = await change(60, seen)
    expect(first.status).toBe(200)
    const { body } = await change(90, seen)
    expect(codes(body)).toEqual(['record.changedSince'])
    expect(body.problems[0].message).toContain('Ines Marrow changed this at 2027-03-01T11:00:00.000Z')
    expect((await shop.view('shop')).settings.collection).toEqual({ uncollectedDays: 60 })
    expect((await change(90, first.body.stamps)).status).toBe(200)
  })

  it('on one group is no obstacle to a change of another', async () => {
    const { stamps } = await shop.view('shop')
    await send('shop.changeSettings', { collection: { uncollectedDays: 60 }, seen: stamps })
    const { status } = await send('shop.changeSettings', { eInvoice: { on: true }, seen: stamps })
    expect(status).toBe(200)
  })

  it('on settings must have seen every group that it writes', async () => {
    const { stamps } = await shop.view('shop')
    const { body } = await send('shop.changeSettings', {
      collection: { uncollectedDays: 60 },
      shop: testSettings.shop,
      seen: { collection: stamps.collection },
    })
    expect(codes(body)).toEqual(['input.seenMissing'])
  })

  it('on a part is refused where its cost came in anew meanwhile, not where only its stock moved', async () => {
    const part = { kind: 'line', name: 'Gut line', unitCost: '2.10', unitPrice: '6.00' }
    const { id } = await shop.act('stores.addPart', part)
    const { stamp } = await shop.view(`parts/${id}`)
    const change = (name: string) => send('stores.changePart', { ...part, partId: id, name, seen: stamp })
    await shop.act('stores.receive', { partId: id, quantity: 5 })
    expect((await change('Gut line')).status).toBe(200)
    await shop.act('stores.receive', { partId: id, quantity: 5, unitCost: '2.40' })
    expect(codes((await change('Gut line, thick')).body)).toEqual(['record.changedSince'])
  })

  it('on a place, a person, a vendor or whose a clock is names what changed', async () => {
    const { id: placeId } = await shop.act('shop.addPlace', { name: 'Shelf A1', kind: 'shelf' })
    const room = { heightMm: null, widthMm: null, depthMm: null, bearsG: null, weightsHang: null }
    const place = (heightMm: number) =>
      send('shelf.describePlace', { placeId, ...room, heightMm, seen: room })
    expect((await place(400)).status).toBe(200)
    expect(codes((await place(500)).body)).toEqual(['record.changedMeanwhile heightMm'])

    const { id: personId } = await shop.act('shop.addPerson', { name: 'Bram Tolland' })
    const leave = () => send('shop.setPersonActive', { personId, active: false, seen: { active: true } })
    expect((await leave()).status).toBe(200)
    expect(codes((await leave()).body)).toEqual(['record.changedMeanwhile active'])

    const { id: vendorId } = await shop.act('stores.addVendor', { name: 'Corrie', contact: '' })
    const vendor = (contact: string) =>
      send('stores.changeVendor', {
        vendorId,
        name: 'Corrie',
        contact,
        seen: { name: 'Corrie', contact: '' },
      })
    expect((await vendor('by post')).status).toBe(200)
    expect(codes((await vendor('by telephone')).body)).toEqual(['record.changedMeanwhile contact'])

    const one = await shop.act('register.addOwner', rosamund)
    const two = await shop.act('register.addOwner', { name: 'Odalys Wren' })
    const { id: clockId } = await shop.act('register.addClock', { ownerId: one.id, form: 'wall' })
    const pass = () => send('register.passClock', { clockId, ownerId: two.id, seen: { ownerId: one.id } })
    expect((await pass()).status).toBe(200)
    expect(codes((await pass()).body)).toEqual(['record.changedMeanwhile ownerId'])
  })
})
