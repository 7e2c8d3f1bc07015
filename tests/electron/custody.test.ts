import { afterEach, beforeEach, expect, it } from 'vitest'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'
import { another, handOver, workedRepair } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

interface Group {
  readonly where: string
  readonly things: readonly { kind: string; number: number; place?: string | null; vendor?: string }[]
}

/** What stands in each group: kind and repair number. */
const here = async () => {
  const { groups } = (await shop.view('custody')) as { groups: Group[] }
  return Object.fromEntries(
    groups.map(({ where, things }) => [where, things.map(({ kind, number }) => `${kind} ${number}`)]),
  )
}

it('every clock stands in one place, its parts by their tags, and what is sent out at its vendor', async () => {
  const running = await workedRepair(shop)
  const place = await shop.act('shop.addPlace', { name: 'Long shelf 1', kind: 'shelf' })
  await shop.act('shelf.startRunIn', { repairId: running.id, placeId: place.id })
  const bench = await workedRepair(shop, another)
  await shop.act('bench.sendOut', {
    repairId: bench.id,
    vendor: 'Ashby Wheel Cutting',
    description: 'Strike wheel re-toothed',
    dueOn: '2027-03-20',
  })
  await takeInPell(shop, {
    clock: { form: 'wall', trains: 1, power: 'spring', duration: '8-day' },
    belongings: [
      { item: 'pendulum', count: 1, custody: 'received' },
      { item: 'case-key', count: 1, custody: 'kept' },
      { item: 'finial', count: 1, custody: 'absent' },
    ],
  })
  const groups = await here()
  expect(groups.shelf).toEqual(['clock 2201'])
  expect(groups.bench).toEqual(['clock 2202'])
  expect(groups.counter).toEqual(['clock 2203'])
  expect(groups.vendor).toEqual(['outside 2202'])
  expect(groups['by-tag']?.filter(line => line.endsWith('2203'))).toEqual(['belonging 2203'])
  expect(groups.owner?.filter(line => line.endsWith('2203'))).toEqual(['belonging 2203'])
  const shelf = (await shop.view('custody')).groups.find((group: Group) => group.where === 'shelf')
  expect(shelf.things[0].place).toBe('Long shelf 1')
})

it('a clock handed over is no longer the shop’s to keep', async () => {
  const repair = await workedRepair(shop)
  await shop.act('bench.declareReady', { repairId: repair.id, reason: 'Case repair only' })
  const { invoiceLines } = await shop.view(`repairs/${repair.number}`)
  await shop.act('accounts.invoice', { repairId: repair.id, lines: invoiceLines })
  await handOver(shop, repair)
  expect(Object.values(await here()).flat()).toEqual([])
})
