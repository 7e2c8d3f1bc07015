import { afterEach, beforeEach, expect, it } from 'vitest'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'
import { agreedRepair } from './work-fixture.ts'

let shop: Shop
let repair: { id: number; number: number }
beforeEach(async () => {
  shop = await openTestShop()
  // A bracket clock with a silvered dial.
  repair = await agreedRepair(shop)
})
afterEach(() => shop.close())

const sendOut = (more: object) =>
  shop.tryAct('bench.sendOut', {
    repairId: repair.id,
    vendor: 'Lockgate Dials',
    description: 'Dial made bright',
    ...more,
  })

const problemsOf = async (answer: ReturnType<typeof sendOut>): Promise<string[]> =>
  ((await answer).body.problems ?? []).map((p: { code: string; field: string }) => `${p.code} ${p.field}`)

// Trade reference §7, common practice: a silvered dial is re-silvered or left alone, never cleaned.
it('a silvered dial is not sent out for cleaning, seen caution or not; re-silvering is', async () => {
  expect(await problemsOf(sendOut({ work: 'dial-cleaning' }))).toEqual(['refused.silvered-dial work'])
  await shop.act('bench.acknowledge', { repairId: repair.id })
  expect(await problemsOf(sendOut({ work: 'dial-cleaning' }))).toEqual(['refused.silvered-dial work'])
  expect(await problemsOf(sendOut({ work: 're-silvering' }))).toEqual([])
})

it('work that is sent out in words alone waits until the caution is on record as seen', async () => {
  expect(await problemsOf(sendOut({}))).toEqual(['unseen.silvered-dial description'])
  await shop.act('bench.acknowledge', { repairId: repair.id })
  expect(await problemsOf(sendOut({}))).toEqual([])
})

it('bench time on the dial, clocked or typed, waits until the caution is on record as seen', async () => {
  const typed = { repairId: repair.id, task: 'dial', minutes: 20, on: '2027-03-01' }
  const clocked = { repairId: repair.id, task: 'dial' }
  expect(await problemsOf(shop.tryAct('bench.enterLabour', typed))).toEqual(['unseen.silvered-dial task'])
  expect(await problemsOf(shop.tryAct('bench.startLabour', clocked))).toEqual(['unseen.silvered-dial task'])
  expect(await problemsOf(shop.tryAct('bench.startLabour', { ...clocked, task: 'strip' }))).toEqual([])
  await shop.act('bench.acknowledge', { repairId: repair.id })
  expect(await problemsOf(shop.tryAct('bench.enterLabour', typed))).toEqual([])
  expect(await problemsOf(shop.tryAct('bench.startLabour', clocked))).toEqual([])
})

it('on any other dial nothing of it is asked', async () => {
  repair = await takeInPell(shop, {
    owner: { name: 'P. Quill' },
    clock: { form: 'wall', trains: 1, power: 'spring', duration: '8-day', dial: 'painted' },
    belongings: [],
    condition: [],
  })
  expect(await problemsOf(sendOut({ work: 'dial-cleaning' }))).toEqual([])
  expect(await problemsOf(sendOut({}))).toEqual([])
})
