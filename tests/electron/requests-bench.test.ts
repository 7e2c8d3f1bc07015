import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'
import { agreedRepair, another, refused } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const bench = async (number = 2201) => (await shop.view(`repairs/${number}`)).bench

describe('the labour clock', () => {
  it('runs from start to stop and counts the minutes that passed', async () => {
    const repair = await agreedRepair(shop)
    await shop.act('bench.startLabour', { repairId: repair.id, task: 'strip' })
    shop.clock.at = '2027-03-01T10:05:30.000Z'
    expect((await bench()).labour).toMatchObject({ totalMinutes: 45, running: [{ task: 'strip' }] })
    expect(await shop.act('bench.stopLabour', {})).toMatchObject({ minutes: 45 })
    expect((await bench()).labour).toMatchObject({ totalMinutes: 45, agreedMinutes: 450, running: [] })
  })

  it('runs on one repair for one person: another one is refused unless it may stop the first', async () => {
    const first = await agreedRepair(shop)
    const second = await agreedRepair(shop, another)
    await shop.act('bench.startLabour', { repairId: first.id, task: 'strip' })
    shop.clock.at = '2027-03-01T09:50:00.000Z'
    const start = { repairId: second.id, task: 'clean' }
    expect(refused(await shop.tryAct('bench.startLabour', start))).toEqual({
      status: 422,
      problems: ['labour.running switch'],
    })
    await shop.act('bench.startLabour', { ...start, switch: true })
    expect((await bench(2201)).labour).toMatchObject({ totalMinutes: 30, running: [] })
    expect((await bench(2202)).labour.running).toHaveLength(1)
  })

  it('changes its task on the same repair without being asked', async () => {
    const { id } = await agreedRepair(shop)
    await shop.act('bench.startLabour', { repairId: id, task: 'strip' })
    shop.clock.at = '2027-03-01T10:00:00.000Z'
    await shop.act('bench.startLabour', { repairId: id, task: 'clean' })
    const { labour } = await bench()
    expect(labour.entries.map((e: { task: string; minutes: number }) => [e.task, e.minutes])).toEqual([
      ['strip', 40],
      ['clean', 0],
    ])
  })

  it('left running overnight is asked about and stopped at the time the work really ended', async () => {
    const { id } = await agreedRepair(shop)
    await shop.act('bench.startLabour', { repairId: id, task: 'polish' })
    shop.clock.at = '2027-03-02T09:00:00.000Z'
    expect((await shop.view('bench')).running).toMatchObject([{ forgotten: true, number: 2201 }])
    expect(refused(await shop.tryAct('bench.stopLabour', {})).problems).toEqual(['labour.tooLong endedAt'])
    const ended = await shop.act('bench.stopLabour', { endedAt: '2027-03-01T12:20' })
    expect(ended.minutes).toBe(180)
  })

  it('is not stopped by a computer clock that was put back', async () => {
    const { id } = await agreedRepair(shop)
    await shop.act('bench.startLabour', { repairId: id, task: 'polish' })
    shop.clock.at = '2027-03-01T08:00:00.000Z'
    expect(refused(await shop.tryAct('bench.stopLabour', {})).problems).toEqual(['clock.behind'])
    const again = await shop.tryAct('bench.startLabour', { repairId: id, task: 'clean' })
    expect(refused(again).problems).toEqual(['clock.behind'])
    expect((await bench()).labour.running).toHaveLength(1)
  })

  it('waits for the go-ahead, but for looking the clock over', async () => {
    const { id } = await takeInPell(shop)
    const early = await shop.tryAct('bench.startLabour', { repairId: id, task: 'strip' })
    expect(refused(early).problems).toEqual(['standing.noGoAhead'])
    await shop.act('bench.startLabour', { repairId: id, task: 'assess' })
    expect((await shop.view('repairs/2201')).standing.stage).toBe('taken-in')
  })

  it('says when none is running', async () => {
    expect(refused(await shop.tryAct('bench.stopLabour', {})).problems).toEqual(['labour.notRunning'])
  })
})

describe('labour typed afterwards', () => {
  it('takes times across midnight and a change of the clocks for what really passed', async () => {
    const { id } = await agreedRepair(shop)
    shop.clock.at = '2027-03-29T09:00:00.000Z'
    const night = { repairId: id, task: 'test', from: '2027-03-27T23:00', to: '2027-03-28T03:00' }
    expect(await shop.act('bench.enterLabour', night)).toMatchObject({ minutes: 180 })
  })

  it('takes minutes of a day where the times were not told', async () => {
    const { id } = await agreedRepair(shop)
    await shop.act('bench.enterLabour', { repairId: id, task: 'oil', minutes: 25, on: '2027-02-26' })
    await shop.act('bench.enterLabour', { repairId: id, task: 'oil', minutes: 20, on: '2027-03-01' })
    const { labour } = await bench()
    expect(labour.totalMinutes).toBe(45)
    expect(labour.entries).toMatchObject([
      { on: '2027-02-26', timed: false },
      { on: '2027-03-01', timed: false },
    ])
  })

  it.each([
    [{ from: '2027-03-01T10:00', to: '2027-03-01T11:00' }, 'labour.inFuture from'],
    [{ from: '2027-03-01T09:00', to: '2027-03-01T08:00' }, 'labour.endBeforeStart to'],
    [{ from: '2027-02-27T09:00', to: '2027-02-28T09:00' }, 'labour.tooLong to'],
    [{ from: '2027-03-01T08:00' }, 'input.required to'],
    [{ minutes: 30 }, 'input.required on'],
    [{ minutes: 30, on: '2027-03-02' }, 'labour.inFuture on'],
    [{ minutes: 30, on: '2027-03-01', from: '2027-03-01T08:00' }, 'labour.eitherWay minutes'],
    [{ minutes: 961, on: '2027-02-01' }, 'input.tooLarge minutes'],
    [{ from: 'yesterday', to: '2027-02-30T10:00' }, 'input.notATime from'],
  ])('%o is refused: %s', async (times, problem) => {
    const { id } = await agreedRepair(shop)
    const answer = await shop.tryAct('bench.enterLabour', { repairId: id, task: 'oil', ...times })
    expect(refused(answer)).toMatchObject({ status: 422, problems: expect.arrayContaining([problem]) })
    expect((await bench()).labour.entries).toEqual([])
  })

  it('never has one person at two clocks at once', async () => {
    const { id } = await agreedRepair(shop)
    const times = { from: '2027-02-26T09:00', to: '2027-02-26T10:00' }
    await shop.act('bench.enterLabour', { repairId: id, task: 'oil', ...times })
    const within = { from: '2027-02-26T09:59', to: '2027-02-26T10:30' }
    const over = await shop.tryAct('bench.enterLabour', { repairId: id, task: 'oil', ...within })
    expect(refused(over).problems).toEqual(['labour.overlap from'])
    const after = { from: '2027-02-26T10:00', to: '2027-02-26T10:30' }
    await shop.act('bench.enterLabour', { repairId: id, task: 'oil', ...after })
    expect((await bench()).labour.totalMinutes).toBe(90)
  })

  it('is struck out with a reason, stays legible and counts no more', async () => {
    const { id } = await agreedRepair(shop)
    const entry = await shop.act('bench.enterLabour', {
      repairId: id,
      task: 'oil',
      minutes: 25,
      on: '2027-02-26',
    })
    await shop.act('bench.strikeLabour', { entryId: entry.id, reason: 'Was repair 2198' })
    const view = await shop.view('repairs/2201')
    expect(view.bench.labour).toMatchObject({
      totalMinutes: 0,
      entries: [{ minutes: 0, struckReason: 'Was repair 2198' }],
    })
    expect(view.standing.stage).toBe('go-ahead')
    const twice = await shop.tryAct('bench.strikeLabour', { entryId: entry.id, reason: 'x' })
    expect(refused(twice).problems).toEqual(['entry.struck entryId'])
  })
})

describe('findings and waits', () => {
  it('a finding that needs the owner’s word holds the repair until the word comes', async () => {
    const { id } = await agreedRepair(shop)
    shop.clock.at = '2027-03-01T11:00:00.000Z'
    const found = await shop.act('bench.find', {
      repairId: id,
      component: 'movement',
      text: 'Second wheel pivot scored',
      needsWord: true,
    })
    expect(found.stage).toBe('waiting')
    expect((await shop.view('bench')).queue[0]).toMatchObject({ waitingFor: 'owner' })
    const estimate = await shop.act('estimates.write', {
      repairId: id,
      supplement: true,
      lines: [{ kind: 'labour', description: 'Re-pivot', quantity: '1', unit: '48.00', findingId: found.id }],
    })
    await shop.act('estimates.send', { estimateId: estimate.id, way: 'telephone' })
    shop.clock.at = '2027-03-01T12:00:00.000Z'
    const word = { estimateId: estimate.id, answer: 'go-ahead', who: 'R. Pell', way: 'telephone' }
    expect((await shop.act('estimates.recordWord', word)).stage).not.toBe('waiting')
    expect((await bench()).labour.agreedMinutes).toBe(510)
  })

  it('what begins to wait stops its labour clock, so that nothing runs on a repair that waits', async () => {
    const { id } = await agreedRepair(shop)
    const start = () => shop.act('bench.startLabour', { repairId: id, task: 'strip' })
    await start()
    shop.clock.at = '2027-03-01T11:00:00.000Z'
    const needsWord = {
      repairId: id,
      component: 'movement',
      text: 'Second wheel pivot scored',
      needsWord: true,
    }
    await shop.act('bench.find', needsWord)
    expect((await bench()).labour).toMatchObject({ running: [], totalMinutes: 100 })
    expect((await bench()).findings).toMatchObject([{ unanswered: true }])
    // What is agreed may be worked on meanwhile; another wait stops it again.
    await start()
    shop.clock.at = '2027-03-01T11:30:00.000Z'
    await shop.act('bench.wait', { repairId: id, reason: 'parts' })
    expect((await bench()).labour).toMatchObject({ running: [], totalMinutes: 130 })
  })

  it('a finding no longer asks for the owner’s word once a word has come', async () => {
    const { id } = await agreedRepair(shop)
    shop.clock.at = '2027-03-01T11:00:00.000Z'
    const found = { repairId: id, component: 'movement', text: 'Second wheel pivot scored', needsWord: true }
    await shop.act('bench.find', found)
    const lines = [{ kind: 'labour', description: 'Re-pivot', quantity: '1', unit: '48.00' }]
    const supplement = await shop.act('estimates.write', { repairId: id, supplement: true, lines })
    await shop.act('estimates.send', { estimateId: supplement.id, way: 'telephone' })
    shop.clock.at = '2027-03-01T12:00:00.000Z'
    const word = { estimateId: supplement.id, who: 'R. Pell', way: 'telephone' }
    await shop.act('estimates.recordWord', { ...word, answer: 'go-ahead' })
    expect((await bench()).findings).toMatchObject([{ needsWord: true, unanswered: false }])
  })

  it('a supplement after the invoice is refused until the clock is back at the bench', async () => {
    const { id } = await agreedRepair(shop)
    await shop.act('bench.declareReady', { repairId: id, reason: 'Case repair only' })
    const { invoiceLines } = await shop.view('repairs/2201')
    await shop.act('accounts.invoice', { repairId: id, lines: invoiceLines })
    const lines = [{ kind: 'labour', description: 'Re-pivot', quantity: '1', unit: '48.00' }]
    const late = await shop.tryAct('estimates.write', { repairId: id, supplement: true, lines })
    expect(refused(late).problems).toEqual(['standing.alreadyReady'])
  })

  it('a finding struck out holds nothing', async () => {
    const { id } = await agreedRepair(shop)
    shop.clock.at = '2027-03-01T11:00:00.000Z'
    const found = await shop.act('bench.find', {
      repairId: id,
      component: 'dial',
      text: 'Loose foot',
      needsWord: true,
    })
    await shop.act('bench.strikeFinding', { findingId: found.id, reason: 'It was tight after all' })
    expect((await shop.view('repairs/2201')).standing.stage).toBe('go-ahead')
  })

  it('a wait stands once for each reason, and ends once', async () => {
    const { id } = await agreedRepair(shop)
    const wait = await shop.act('bench.wait', { repairId: id, reason: 'parts', note: 'Mainspring' })
    expect(wait.stage).toBe('waiting')
    const twice = await shop.tryAct('bench.wait', { repairId: id, reason: 'parts' })
    expect(refused(twice).problems).toEqual(['wait.open reason'])
    expect((await shop.act('bench.endWait', { waitId: wait.id })).stage).toBe('go-ahead')
    const ended = await shop.tryAct('bench.endWait', { waitId: wait.id })
    expect(refused(ended).problems).toEqual(['wait.ended waitId'])
  })

  it('marks as found are kept beside the steps that need them again', async () => {
    const { id } = await agreedRepair(shop)
    const mark = { repairId: id, mark: 'hammers', text: 'Hammer 1 nearest the back plate' }
    await shop.act('bench.noteAsFound', mark)
    const card = await bench()
    expect(card.asFound).toMatchObject([{ mark: 'hammers' }])
    const again = card.steps.filter((s: { marks: string[] }) => s.marks.includes('hammers'))
    expect(again.map((s: { code: string }) => s.code)).toEqual(['as-found', 'assemble', 'sound', 'hammers'])
  })

  it('the cautions a person has seen are on record', async () => {
    const { id } = await agreedRepair(shop)
    await shop.act('bench.acknowledge', { repairId: id })
    await shop.act('bench.acknowledge', { repairId: id })
    const seen = (await bench()).cautionsSeen.map((c: { caution: string }) => c.caution)
    expect(seen).toEqual(['silvered-dial', 'spring-power'])
  })
})

describe('outside work', () => {
  it('goes to a vendor known by number or by name, is overdue after its day, and comes back once', async () => {
    const { id } = await agreedRepair(shop)
    const work = { repairId: id, vendor: 'Weir Lane Gilders', work: 're-silvering', description: 'Dial' }
    const sent = await shop.act('bench.sendOut', { ...work, dueOn: '2027-03-10', cost: '20', price: '30.00' })
    const again = await shop.act('bench.sendOut', { ...work, vendor: 'weir lane gilders' })
    expect(again.vendorId).toBe(sent.vendorId)
    shop.clock.at = '2027-03-11T09:00:00.000Z'
    expect((await shop.view('bench')).away[0]).toMatchObject({ overdue: true, vendor: 'Weir Lane Gilders' })
    await shop.act('bench.takeBack', { outsideWorkId: sent.id, cost: '25.00' })
    expect((await bench()).outsideWork[0]).toMatchObject({
      costMinor: 2500,
      priceMinor: 3000,
      overdue: false,
    })
    const back = await shop.tryAct('bench.takeBack', { outsideWorkId: sent.id })
    expect(refused(back).problems).toEqual(['outside.back outsideWorkId'])
  })

  it('needs a vendor and sums that are none too precise', async () => {
    const { id } = await agreedRepair(shop)
    const nobody = await shop.tryAct('bench.sendOut', { repairId: id, work: 'repair', description: 'Gild' })
    expect(refused(nobody).problems).toEqual(['input.required vendor'])
    const precise = {
      repairId: id,
      vendor: 'W',
      work: 'repair',
      description: 'Gild',
      cost: '1.005',
      price: '-1',
    }
    expect(refused(await shop.tryAct('bench.sendOut', precise)).problems).toEqual([
      'money.tooPrecise cost',
      'number.negative price',
    ])
  })
})

describe('the queue', () => {
  it('stands in the order of comebacks, the order given, the estimated date and the go-ahead', async () => {
    const first = await agreedRepair(shop, { estimatedOn: '2027-04-20' })
    await agreedRepair(shop, { ...another, estimatedOn: '2027-03-12' })
    const numbers = async () => (await shop.view('bench')).queue.map((r: { number: number }) => r.number)
    expect(await numbers()).toEqual([2202, 2201])
    await shop.act('bench.order', { repairIds: [first.id] })
    expect(await numbers()).toEqual([2201, 2202])
    await shop.act('bench.order', { repairIds: [] })
    expect(await numbers()).toEqual([2202, 2201])
    const twice = await shop.tryAct('bench.order', { repairIds: [first.id, first.id] })
    expect(refused(twice).problems).toEqual(['order.twice repairIds[1]'])
  })

  it('says how many weeks of open hours the agreed hours fill', async () => {
    await agreedRepair(shop)
    const { capacity } = await shop.view('bench')
    // 5 days of 3.5 and 4 hours for one person; 7.5 hours agreed.
    expect(capacity).toEqual({ aheadMinutes: 450, benches: 1, minutesPerWeek: 2250, weeks: 0.2 })
  })
})

it('every act names what is wrong with its input and writes nothing', async () => {
  const before = (await shop.view('dayBook')).rows.length
  const acts = ['startLabour', 'enterLabour', 'strikeLabour', 'find', 'wait', 'sendOut', 'usePart', 'order']
  for (const act of acts) {
    const { status, problems } = refused(await shop.tryAct(`bench.${act}`, { colour: 'green' }))
    expect(status).toBe(422)
    expect(problems).toContain('input.unknownField colour')
  }
  const nowhere = await shop.tryAct('bench.startLabour', { repairId: 99, task: 'oil' })
  expect(refused(nowhere)).toEqual({ status: 404, problems: ['repair.unknown repairId'] })
  expect((await shop.view('dayBook')).rows.length).toBe(before)
})

it('steps of the service are ticked with who and when, and a tick is taken back', async () => {
  const repair = await agreedRepair(shop)
  const tick = (step: string, done: boolean) =>
    shop.tryAct('bench.tickStep', { repairId: repair.id, step, done })
  const step = async () =>
    (await shop.view('repairs/2201')).bench.steps.find((one: { code: string }) => one.code === 'oil')
  expect((await step()).done).toBeNull()
  await tick('oil', true)
  expect((await step()).done).toEqual({ at: shop.clock.at, person: expect.any(String) })
  await tick('oil', false)
  expect((await step()).done).toBeNull()
  expect(refused(await tick('torsion-on', true)).problems).toEqual(['step.notOfThisClock step'])
  expect(refused(await tick('polka', true)).problems).toEqual(['input.notOneOf step'])
})
