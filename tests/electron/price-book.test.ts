import { afterEach, expect, it } from 'vitest'
import { works } from '../../core/vocabulary/work.ts'
import { openTestShop, type Shop, takeInPell, testSettings } from './handler-fixture.ts'

const prices = {
  ...testSettings.prices,
  estimateFee: '25',
  rushPercent: '50',
  hours: [
    ...testSettings.prices.hours.filter(({ work }) => work === 'overhaul'),
    { work: 'dial-cleaning', form: null, trains: null, hours: '1' },
    { work: 're-silvering', form: null, trains: null, hours: '2' },
  ],
}

let shop: Shop
let repair: { id: number; number: number; clockId: number }
async function begin() {
  shop = await openTestShop()
  await shop.act('shop.changeSettings', { prices })
  repair = await takeInPell(shop)
}
afterEach(() => shop.close())

const labour = (more: object = {}) => ({
  kind: 'labour',
  description: 'Overhaul of three trains',
  quantity: '5',
  unit: '48',
  priced: { from: 'labour', work: 'overhaul' },
  ...more,
})

const write = (...lines: object[]) =>
  shop.tryAct('estimates.write', { repairId: repair.id, supplement: false, lines })

const problemsOf = ({ status, body }: Awaited<ReturnType<typeof write>>) =>
  status === 200 ? [] : body.problems.map((p: { code: string; field: string }) => `${p.code} ${p.field}`)

const lastEstimate = async () => (await shop.view(`repairs/${repair.number}`)).estimates.at(-1)

it('keeps what was asked of the price book and the working that the ledger found itself', async () => {
  await begin()
  expect((await write(labour())).status).toBe(200)
  const [line] = (await lastEstimate()).lines
  expect(line).toMatchObject({
    net: 24000,
    work: 'overhaul',
    priced: { from: 'labour', work: 'overhaul', furtherHours: '0', rush: false },
    working: [
      { code: 'bookHours', values: { hours: '5' } },
      { code: 'hoursAtRate', values: { hours: '5', rate: '48' } },
    ],
  })
})

it('takes no working from a request, and no figures that are not the book’s', async () => {
  await begin()
  const told = labour({ working: [{ code: 'bookHours', values: { hours: '1' } }] })
  expect(problemsOf(await write(told))).toEqual(['input.unknownField lines[0].working'])
  expect(problemsOf(await write(labour({ unit: '47.99' })))).toEqual(['book.otherFigures lines[0].unit'])
  expect(problemsOf(await write(labour({ quantity: '4' })))).toEqual(['book.otherFigures lines[0].unit'])
  expect(problemsOf(await write(labour({ kind: 'fee' })))).toEqual(['book.otherFigures lines[0].unit'])
  expect(problemsOf(await write(labour({ charge: '1' })))).toEqual(['book.otherFigures lines[0].unit'])
})

it('names every line that the price book cannot write', async () => {
  await begin()
  const unknown = labour({ priced: { from: 'labour', work: 'set-up' } })
  const noPart = { ...labour(), kind: 'part', priced: { from: 'part', by: 'markup', pieces: 1 } }
  const noFee = { ...labour(), kind: 'fee', quantity: '-1', unit: '25', priced: { from: 'fee-credit' } }
  expect(problemsOf(await write(unknown, noPart, labour(), noFee))).toEqual([
    'book.noHours lines[0].priced.work',
    'book.noPart lines[1].priced.partId',
    'book.noFeePaid lines[3].priced.from',
  ])
  expect(problemsOf(await write({ ...noPart, partId: 99 }))).toEqual(['part.unknown partId'])
})

it('adds what rush work adds as the charge of the line, into the estimate’s paper', async () => {
  await begin()
  const rush = labour({ charge: '120', priced: { from: 'labour', work: 'overhaul', rush: true } })
  const { body } = await write(rush)
  expect(body.totalMinor).toBe((24000 + 12000) * 1.2)
  const { documentId } = await shop.act('estimates.send', { estimateId: body.id, way: 'letter' })
  const { contents } = await shop.view(`documents/${documentId}`)
  expect(contents.lines[0]).toMatchObject({ charge: '120', net: 36000, work: 'overhaul' })
  expect(contents.lines[0].working.at(-1)).toEqual({
    code: 'rush',
    values: { percent: '50', added: '120.00' },
  })
})

it('prices a part of the stores by its cost as the stores have it now', async () => {
  await begin()
  const part = await shop.act('stores.addPart', {
    kind: 'mainspring',
    name: 'Mainspring',
    sizes: [],
    unitCost: '9.80',
    unitPrice: '18.60',
    reorderAt: 0,
  })
  const line = {
    kind: 'part',
    description: 'Mainspring',
    quantity: '2',
    unit: '19.60',
    partId: part.id,
    priced: { from: 'part', by: 'markup', pieces: 2 },
  }
  expect((await write(line)).body.totalMinor).toBe(3920 * 1.2)
  const own = { ...line, unit: '18.6', priced: { ...line.priced, by: 'price' } }
  expect((await write(own)).body.totalMinor).toBe(3720 * 1.2)
})

it('keeps the price that was told when the price book changes: a new version refuses the old figures', async () => {
  await begin()
  await write(labour())
  await shop.act('shop.changeSettings', { prices: { ...prices, benchRate: '52' } })
  expect(problemsOf(await write(labour()))).toEqual(['book.otherFigures lines[0].unit'])
  expect((await lastEstimate()).lines[0].unit).toBe('48')
})

it('refuses to clean a silvered dial, by the code of the work whoever does it and whatever it is called', async () => {
  await begin()
  const clean = { kind: 'labour', description: 'Brighten the face', quantity: '1', unit: '48' }
  expect(problemsOf(await write(labour(), { ...clean, work: 'dial-cleaning' }))).toEqual([
    'refused.silvered-dial lines[1].description',
  ])
  const byBook = { ...clean, priced: { from: 'labour', work: 'dial-cleaning' } }
  expect(problemsOf(await write(byBook))).toEqual(['refused.silvered-dial lines[0].description'])
  const away = {
    ...clean,
    kind: 'outside',
    unit: '72',
    priced: { from: 'outside', work: 'dial-cleaning', cost: '60' },
  }
  expect(problemsOf(await write(away))).toEqual(['refused.silvered-dial lines[0].description'])
  const silver = { ...away, description: 'Clean', priced: { ...away.priced, work: 're-silvering' } }
  expect((await write(silver)).status).toBe(200)
  const painted = await shop.view(`repairs/${repair.number}`)
  const { id, form, maker, serial } = painted.clock
  await shop.act('register.changeClock', { clockId: id, form, maker, serial, dial: 'painted' })
  expect((await write(byBook)).status).toBe(200)
})

it('takes a fee for an estimate off once, when it was billed on an earlier visit and paid', async () => {
  await begin()
  const fee = {
    kind: 'fee',
    description: 'Estimate',
    quantity: '1',
    unit: '25',
    priced: { from: 'estimate-fee' },
  }
  const credit = { ...fee, quantity: '-1', priced: { from: 'fee-credit' } }
  const { body: estimate } = await write(labour())
  await shop.act('estimates.send', { estimateId: estimate.id, way: 'letter' })
  const said = { who: 'Rosamund Pell', way: 'letter' }
  await shop.act('estimates.recordWord', { estimateId: estimate.id, answer: 'declined', ...said })
  await shop.act('accounts.invoice', { repairId: repair.id, lines: [fee] })
  expect(problemsOf(await write(credit))).toEqual(['book.noFeePaid lines[0].priced.from'])
  await shop.act('accounts.pay', { repairId: repair.id, amount: '30', method: 'cash' })
  const { belongings } = await shop.view(`repairs/${repair.number}`)
  await shop.act('counter.handOver', {
    repairId: repair.id,
    toName: 'Rosamund Pell',
    belongings: belongings
      .filter((b: { custody: string }) => b.custody === 'received')
      .map((b: { id: number }) => ({ id: b.id, returned: true })),
  })
  const { owner } = await shop.view(`repairs/${repair.number}`)
  const again = await takeInPell(shop, { owner: { id: owner.id }, clock: { id: repair.clockId } })
  repair = { ...again, clockId: repair.clockId }
  expect((await shop.view(`repairs/${repair.number}`)).feePaidMinor).toBe(2500)
  const { status, body } = await write(labour(), credit)
  expect([status, body.totalMinor]).toEqual([200, (24000 - 2500) * 1.2])
})

it('opens a shop by its bench rate alone, with hours for every kind of work, those of common practice first', async () => {
  await begin()
  const { settings } = await shop.view('shop')
  expect(testSettings.prices.hours.map(({ work }) => work)).toEqual(expect.arrayContaining([...works]))
  expect(settings.prices.hours.slice(0, 2)).toEqual([
    { work: 'overhaul', form: null, trains: 2, hours: '4' },
    { work: 'overhaul', form: null, trains: 3, hours: '5' },
  ])
  const twice = { ...prices, hours: [...prices.hours, prices.hours[0]] }
  const { body } = await shop.tryAct('shop.changeSettings', { prices: twice })
  expect(body.problems).toMatchObject([
    { code: 'book.hoursTwice', field: `prices.hours[${prices.hours.length}].work` },
  ])
})
