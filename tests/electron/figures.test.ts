import { parse } from 'csv-parse/sync'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { invoicedRepair } from './billed-shop.ts'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'
import { agreedRepair, handOver } from './work-fixture.ts'

let shop: Shop

const on = (date: string, time = '09:00') => {
  shop.clock.at = `${date}T${time}:00.000Z`
}

beforeAll(async () => {
  shop = await openTestShop()
  const helper = await shop.act('shop.addPerson', { name: 'Osric Wick' })
  const opener = shop.clock.person
  // In on 1 March and agreed the same day, worked on by two, waited four days for parts, on the shelf from 11 to 25 March.
  on('2027-03-01')
  const repair = await agreedRepair(shop)
  const worked = (minutes: number) =>
    shop.act('bench.enterLabour', {
      repairId: repair.id,
      task: 'clean',
      minutes,
      on: shop.clock.at.slice(0, 10),
    })
  await worked(120)
  shop.clock.person = helper.id
  await worked(240)
  shop.clock.person = opener
  on('2027-03-03')
  const wait = await shop.act('bench.wait', { repairId: repair.id, reason: 'parts' })
  on('2027-03-07')
  await shop.act('bench.endWait', { waitId: wait.id })
  on('2027-03-11')
  const place = await shop.act('shop.addPlace', { name: 'Long shelf 1', kind: 'shelf' })
  const run = await shop.act('shelf.startRunIn', { repairId: repair.id, placeId: place.id })
  on('2027-03-25')
  await shop.act('shelf.pass', { runId: run.id, reason: 'Watched at home before' })
  const { invoiceLines } = await shop.view(`repairs/${repair.number}`)
  await shop.act('accounts.invoice', { repairId: repair.id, lines: invoiceLines })
  on('2027-03-27')
  await handOver(shop, repair)
  // A second one is billed without any time on record, and goes in April.
  on('2027-04-02')
  const second = await invoicedRepair(shop, {
    more: {
      owner: { name: 'Tobias Okafor-Lind' },
      clock: { form: 'mantel', trains: 2, power: 'spring', duration: '8-day' },
    },
  })
  on('2027-04-03')
  await handOver(shop, second)
  // The first comes back in May.
  on('2027-05-04')
  await takeInPell(shop, {
    owner: { id: repair.ownerId },
    clock: { id: repair.clockId },
    comebackOf: repair.id,
    covered: true,
  })
})
afterAll(() => shop.close())

const spring = 'from=2027-03-01&to=2027-04-30'
const march = 'from=2027-03-01&to=2027-03-31'

it('hours tell what was agreed against what was worked, by work and by form', async () => {
  const { hours, handedOver } = await shop.view(`figures?${march}`)
  expect(handedOver).toBe(1)
  const both = { repairs: 1, estimatedMinutes: 450, workedMinutes: 360, overMinutes: -90, workedPercent: 80 }
  expect(hours.byForm).toEqual([{ key: 'bracket', ...both }])
  expect(hours.byWork).toMatchObject([both])
})

it('turn-round shows the two weeks on the shelf apart from bench and wait', async () => {
  const { turnRound } = await shop.view(`figures?${march}`)
  expect(turnRound).toHaveLength(1)
  expect(turnRound[0].days).toEqual({ word: 0, bench: 6, waiting: 4, 'run-in': 14, 'to-collect': 2 })
  expect(turnRound[0].allDays).toBe(26)
})

it('comebacks count for the month their clock was handed over in', async () => {
  const { comebacks } = await shop.view(`figures?${spring}`)
  expect(comebacks.byMonth).toEqual([
    { key: '2027-03', handedOver: 1, cameBack: 1, percent: 100 },
    { key: '2027-04', handedOver: 1, cameBack: 0, percent: 0 },
  ])
})

it('the labour billed is shared by the minutes worked, and what nobody worked for stands apart', async () => {
  // 7.5 h × 48.00 = 360.00 for each; 120 and 240 minutes of the first are on record, none of the second.
  const { earned } = await shop.view(`figures?${spring}`)
  expect(earned.rows).toMatchObject([
    { person: 'Osric Wick', minutes: 240, earnedMinor: 24_000, perHourMinor: 6_000 },
    { person: 'Ines Marrow', minutes: 120, earnedMinor: 12_000, perHourMinor: 6_000 },
  ])
  expect(earned.unworkedMinor).toBe(36_000)
})

it('the stock is worth what its pieces cost', async () => {
  const part = await shop.act('stores.addPart', { kind: 'mainspring', name: 'Loop end', unitCost: '12.50' })
  await shop.act('stores.receive', { partId: part.id, quantity: 4 })
  const { stock, stockMinor } = await shop.view(`figures?${march}`)
  expect(stock).toEqual([{ key: 'mainspring', parts: 1, pieces: 4, valueMinor: 5_000 }])
  expect(stockMinor).toBe((await shop.view('stores')).valueMinor)
})

it('nothing in a period is nothing to count, not an error, at either end of the calendar', async () => {
  for (const period of ['from=1583-01-01&to=1583-01-02', 'from=2030-01-01&to=9999-12-31']) {
    const view = await shop.view(`figures?${period}`)
    expect(view).toMatchObject({ handedOver: 0, turnRound: [], hours: { byWork: [], byForm: [] } })
  }
  const { status, body } = await shop.ask('/api/pages/figures?from=2027-02-30&to=2027-03-01')
  expect([status, body.problems[0].field]).toEqual([422, 'from'])
})

it.each(['hours', 'turn-round', 'comebacks', 'earned', 'stock'])(
  'figures/%s.csv has the rows of the page',
  async name => {
    const view = await shop.view(`figures?${spring}`)
    const response = await shop.handle(new Request(`http://ledger/exports/figures/${name}.csv?${spring}`))
    expect(response.status).toBe(200)
    const rows = parse(await response.text(), { columns: true }) as Record<string, string>[]
    const counts: Record<string, number> = {
      hours: view.hours.byWork.length + view.hours.byForm.length,
      'turn-round': view.turnRound.length,
      comebacks: view.comebacks.byWork.length + view.comebacks.byMonth.length,
      earned: view.earned.rows.length,
      stock: view.stock.length,
    }
    expect(rows).toHaveLength(counts[name] ?? -1)
    if (name === 'earned')
      expect(rows[0]).toEqual({ person: 'Osric Wick', minutes: '240', earned: '240.00', per_hour: '60.00' })
  },
)
