import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'
import { agreedRepair, handOver } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

type Took = Awaited<ReturnType<typeof agreedRepair>>

/** A clock handed over on the day it came, under the shop's terms for a service. */
async function warranted() {
  const taken = await agreedRepair(shop, { belongings: [] })
  const repairId = taken.id
  await shop.act('bench.declareReady', { repairId, reason: 'Ran for a week on the bench' })
  const lines = [{ kind: 'labour', description: 'Service', quantity: '1', unit: '48.00' }]
  await shop.act('accounts.invoice', { repairId, lines })
  await handOver(shop, taken)
  return taken
}

const again = ({ id, ownerId, clockId }: Took, more: object) => ({
  owner: { id: ownerId },
  clock: { id: clockId },
  fault: 'Stopped again.',
  comebackOf: id,
  ...more,
})

describe('a comeback', () => {
  it('is not covered where its warranty leaves out what the fault comes from', async () => {
    const first = await warranted()
    const causes = ['mainsprings']
    const { status, body } = await shop.tryAct('counter.takeIn', again(first, { covered: true, causes }))
    expect(status).toBe(422)
    expect(body.problems).toMatchObject([{ code: 'comeback.excluded', field: 'covered' }])
    expect(body.problems[0].message).toContain('mainsprings, and the damage a breaking spring does')
    await shop.act('counter.takeIn', again(first, { covered: false, causes }))
    expect(await shop.view('repairs/2202')).toMatchObject({
      repair: { covered: false, comebackCauses: causes },
      comeback: { number: 2201, cover: { covered: true } },
    })
  })

  it('that the strip shows to be left out waits for an estimate, and is covered again when that was wrong', async () => {
    const first = await warranted()
    const { id: repairId } = await shop.act('counter.takeIn', again(first, { covered: true }))
    const stage = async () => (await shop.view('repairs/2202')).standing.stage
    expect(await stage()).toBe('go-ahead')
    await shop.act('counter.decideCover', { repairId, covered: false, causes: ['accident'] })
    expect(await stage()).toBe('taken-in')
    const { body } = await shop.tryAct('counter.decideCover', {
      repairId,
      covered: true,
      causes: ['accident'],
    })
    expect(body.problems).toMatchObject([{ code: 'comeback.excluded', field: 'covered' }])
    await shop.act('counter.decideCover', { repairId, covered: true, causes: [] })
    expect(await stage()).toBe('go-ahead')
  })

  it('is judged by the day it came in, however long it is here', async () => {
    const first = await warranted()
    shop.clock.at = '2028-03-01T10:00:00.000Z'
    const { id: repairId } = await shop.act('counter.takeIn', again(first, { covered: false }))
    shop.clock.at = '2028-05-01T10:00:00.000Z'
    await shop.act('counter.decideCover', { repairId, covered: true, causes: [] })
    expect((await shop.view('repairs/2202')).repair.covered).toBe(true)
  })

  it('outside its warranty can be covered by the shop’s goodwill, with a reason', async () => {
    const first = await warranted()
    shop.clock.at = '2029-03-01T10:00:00.000Z'
    const { id: repairId } = await shop.act('counter.takeIn', again(first, { covered: false }))
    const refusal = await shop.tryAct('counter.decideCover', { repairId, covered: true })
    expect(refusal.body.problems).toMatchObject([{ code: 'comeback.notCovered', field: 'covered' }])
    await shop.act('counter.decideCover', {
      repairId,
      covered: true,
      goodwill: 'A friend of the house',
      seen: null,
    })
    expect((await shop.view('repairs/2202')).repair).toMatchObject({
      covered: true,
      goodwill: 'A friend of the house',
    })
    await shop.act('counter.decideCover', { repairId, covered: false, goodwill: 'not kept', seen: null })
    expect((await shop.view('repairs/2202')).repair).toMatchObject({ covered: false, goodwill: '' })
  })

  it('is not decided over another decision that its writer has not seen', async () => {
    const first = await warranted()
    const { id: repairId } = await shop.act('counter.takeIn', again(first, { covered: true }))
    const stale = await shop.tryAct('counter.decideCover', {
      repairId,
      covered: false,
      causes: ['accident'],
      seen: { covered: false, causes: [], goodwill: '' },
    })
    expect(stale.body.problems).toMatchObject([{ code: 'record.changedMeanwhile', field: 'covered' }])
  })

  it('alone can be decided on', async () => {
    const { id: repairId } = await takeInPell(shop)
    const { body } = await shop.tryAct('counter.decideCover', { repairId, covered: true })
    expect(body.problems).toMatchObject([{ code: 'comeback.none', field: 'repairId' }])
  })
})
