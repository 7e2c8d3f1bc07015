import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { estimateLines, openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

/** Up to the go-ahead. */
async function agreed() {
  const repair = await takeInPell(shop)
  const estimate = await shop.act('estimates.write', { repairId: repair.id, lines: estimateLines })
  await shop.act('estimates.send', { estimateId: estimate.id, way: 'in-person' })
  await shop.act('estimates.recordWord', {
    estimateId: estimate.id,
    answer: 'go-ahead',
    who: 'Rosamund Pell',
    way: 'telephone',
  })
  return { repair, estimate }
}

const handOver = (repairId: number, view: { belongings: { id: number; custody: string }[] }, more = {}) => ({
  repairId,
  toName: 'Rosamund Pell',
  belongings: view.belongings.filter(b => b.custody === 'received').map(b => ({ id: b.id, returned: true })),
  ...more,
})

describe('one clock through the whole job', () => {
  it('takes in, estimates, gets the word, is declared ready, invoiced, paid, handed over and found under warranty', async () => {
    const { repair, estimate } = await agreed()
    // 7.5 h × 48.00 = 360.00, with 36.40 makes 396.40; 20 % of it 79.28.
    expect(estimate).toMatchObject({ number: '2201/1', totalMinor: 47568, taxMinor: 7928 })
    await shop.act('bench.declareReady', { repairId: repair.id, reason: 'Case repair only' })
    const view = await shop.view('repairs/2201')
    const invoice = await shop.act('accounts.invoice', { repairId: repair.id, lines: view.invoiceLines })
    expect(invoice).toMatchObject({ number: 'I0001', totalMinor: 47568, dueMinor: 47568 })
    const paid = await shop.act('accounts.pay', { repairId: repair.id, amount: '475.68', method: 'card' })
    expect(paid.dueMinor).toBe(0)
    const handed = await shop.act('counter.handOver', handOver(repair.id, view))
    expect(handed.warrantyNumber).toBe('W0001')
    const after = await shop.view('repairs/2201')
    expect(after.standing.stage).toBe('collected')
    expect(after.warranty.given).toMatchObject({ startOn: '2027-03-01', lastDay: '2028-03-01' })
    expect(after.warranty.cover).toMatchObject({ covered: true, reasons: [{ code: 'inTerm' }] })
    expect(after.clockHere).toBeNull()
    expect(after.documents.map((d: { kind: string }) => d.kind)).toEqual([
      'claim-check',
      'estimate',
      'invoice',
      'receipt',
      'warranty',
    ])
  })

  it('opens a comeback against the earlier repair while its warranty covers, free of an estimate', async () => {
    const { repair } = await agreed()
    await shop.act('bench.declareReady', { repairId: repair.id, reason: 'Tested before' })
    const view = await shop.view('repairs/2201')
    await shop.act('accounts.invoice', { repairId: repair.id, lines: view.invoiceLines })
    await shop.act('accounts.pay', { repairId: repair.id, amount: '475.68', method: 'cash' })
    await shop.act('counter.handOver', handOver(repair.id, view))
    shop.clock.at = '2027-06-01T09:00:00.000Z'
    const again = {
      owner: { id: repair.ownerId },
      clock: { id: repair.clockId },
      comebackOf: repair.id,
      covered: true,
    }
    await takeInPell(shop, again)
    const comeback = await shop.view('repairs/2202')
    expect(comeback.standing.stage).toBe('go-ahead')
    expect((await shop.view('repairs/2201')).clockHere).toBe(2202)
    expect((await shop.view('counter')).rows[0]).toMatchObject({ number: 2202, group: 'comeback' })
  })

  it('refuses to call a comeback covered after the warranty has ended', async () => {
    const { repair } = await agreed()
    await shop.act('bench.declareReady', { repairId: repair.id, reason: 'Tested before' })
    const view = await shop.view('repairs/2201')
    await shop.act('accounts.invoice', { repairId: repair.id, lines: view.invoiceLines })
    await shop.act(
      'counter.handOver',
      handOver(repair.id, view, { unpaidReason: 'Pays by transfer on Friday' }),
    )
    shop.clock.at = '2028-03-02T09:00:00.000Z'
    const { status, body } = await shop.tryAct('counter.takeIn', {
      owner: { id: repair.ownerId },
      clock: { id: repair.clockId },
      fault: 'Stopped',
      comebackOf: repair.id,
      covered: true,
    })
    expect(status).toBe(422)
    expect(body.problems[0]).toMatchObject({ code: 'comeback.notCovered', field: 'covered' })
  })
})

describe('what is refused', () => {
  it('hands nothing over while a belonging is unaccounted for, money is owed or a stranger collects: all said at once', async () => {
    const { repair } = await agreed()
    await shop.act('bench.declareReady', { repairId: repair.id, reason: 'Tested before' })
    const view = await shop.view('repairs/2201')
    await shop.act('accounts.invoice', { repairId: repair.id, lines: view.invoiceLines })
    const { status, body } = await shop.tryAct('counter.handOver', {
      repairId: repair.id,
      toName: 'A. Neighbour',
    })
    expect(status).toBe(422)
    expect(body.problems.map((p: { code: string }) => p.code)).toEqual([
      'belonging.unaccounted',
      'handOver.unpaid',
      'handOver.authority',
    ])
    expect((await shop.view('repairs/2201')).standing.stage).toBe('ready')
  })

  it('bills nothing above the agreed sum and its margin before a new go-ahead', async () => {
    const { repair } = await agreed()
    await shop.act('bench.declareReady', { repairId: repair.id, reason: 'Tested before' })
    const lines = [
      ...estimateLines,
      { kind: 'part', description: 'Second mainspring', quantity: '1', unit: '60.00' },
    ]
    const { body } = await shop.tryAct('accounts.invoice', { repairId: repair.id, lines })
    expect(body.problems[0]).toMatchObject({ code: 'limit.exceeded', field: 'lines' })
  })

  it('does no work before the go-ahead, and returns a declined clock unrepaired', async () => {
    const repair = await takeInPell(shop)
    const refused = await shop.tryAct('bench.declareReady', { repairId: repair.id, reason: 'x' })
    expect(refused.body.problems[0].code).toBe('standing.noGoAhead')
    const estimate = await shop.act('estimates.write', { repairId: repair.id, lines: estimateLines })
    await shop.act('estimates.send', { estimateId: estimate.id, way: 'in-person' })
    await shop.act('estimates.recordWord', {
      estimateId: estimate.id,
      answer: 'declined',
      who: 'R. Pell',
      way: 'telephone',
    })
    const view = await shop.view('repairs/2201')
    expect(view.standing).toMatchObject({ stage: 'declined', next: expect.arrayContaining(['hand-over']) })
    await shop.act('counter.handOver', handOver(repair.id, view))
    expect((await shop.view('repairs/2201')).warranty.given).toBeNull()
  })

  it('takes no clock in twice, nor one that belongs to another', async () => {
    const repair = await takeInPell(shop)
    const again = { owner: { id: repair.ownerId }, clock: { id: repair.clockId }, fault: 'x' }
    expect((await shop.tryAct('counter.takeIn', again)).body.problems[0].code).toBe('clock.inShop')
    const other = { ...again, owner: { name: 'T. Okafor-Lind' } }
    expect((await shop.tryAct('counter.takeIn', other)).body.problems[0].code).toBe('clock.otherOwner')
    expect((await shop.view('owners')).rows).toHaveLength(1)
  })

  it('names every field that is wrong, in one answer, and writes nothing', async () => {
    const { status, body } = await shop.tryAct('counter.takeIn', {
      owner: { name: '', contacts: [{ kind: 'phone', value: '12' }] },
      clock: { form: 'sundial', trains: 7 },
      fault: '',
      estimatedOn: '2027-02-30',
      colour: 'green',
    })
    expect(status).toBe(422)
    const fields = body.problems.map((p: { field: string }) => p.field)
    expect(fields).toEqual(
      expect.arrayContaining(['owner.name', 'clock.form', 'clock.trains', 'fault', 'estimatedOn', 'colour']),
    )
    expect((await shop.view('dayBook')).rows).toHaveLength(1)
  })
})

describe('money', () => {
  it('counts a deposit towards the invoice, credits an invoice in full and gives back what the shop then holds', async () => {
    const { repair } = await agreed()
    await shop.act('accounts.pay', { repairId: repair.id, amount: '200', method: 'cash' })
    await shop.act('bench.declareReady', { repairId: repair.id, reason: 'Tested before' })
    const { invoiceLines } = await shop.view('repairs/2201')
    const invoice = await shop.act('accounts.invoice', { repairId: repair.id, lines: invoiceLines })
    expect(invoice.dueMinor).toBe(27568)
    const tooMuch = await shop.tryAct('accounts.pay', {
      repairId: repair.id,
      amount: '275.69',
      method: 'cash',
    })
    expect(tooMuch.body.problems[0].code).toBe('payment.moreThanOwed')
    const credit = await shop.act('accounts.credit', { invoiceId: invoice.id, reason: 'Wrong part' })
    expect(credit).toMatchObject({ number: 'C0001', totalMinor: -47568 })
    const back = await shop.act('accounts.refund', { repairId: repair.id, amount: '200.00', method: 'cash' })
    expect(back.dueMinor).toBe(0)
    const tax = await shop.view('tax?from=2027-03-01&to=2027-03-31')
    expect(tax).toMatchObject({ taxableMinor: 0, taxMinor: 0 })
    expect((await shop.view('repairs/2201')).standing.next).toContain('invoice')
  })
})

describe('the counter’s list', () => {
  it('says what the owner will have to pay: what is agreed with its supplements, less what is paid', async () => {
    const { repair } = await agreed()
    shop.clock.at = '2027-03-02T09:00:00.000Z'
    await shop.act('bench.find', {
      repairId: repair.id,
      component: 'movement',
      text: 'Cracked hook',
      needsWord: true,
    })
    const lines = [{ kind: 'labour', description: 'New hook', quantity: '1', unit: '48.00' }]
    const supplement = await shop.act('estimates.write', { repairId: repair.id, supplement: true, lines })
    await shop.act('estimates.send', { estimateId: supplement.id, way: 'telephone' })
    const row = async () => (await shop.view('counter')).rows[0]
    expect(await row()).toMatchObject({
      group: 'awaiting-word',
      waitingFor: 'owner',
      toPayMinor: 5760,
      amountIs: 'asked',
    })
    await shop.act('estimates.recordWord', {
      estimateId: supplement.id,
      answer: 'go-ahead',
      who: 'R. Pell',
      way: 'telephone',
    })
    await shop.act('accounts.pay', { repairId: repair.id, amount: '100.00', method: 'cash' })
    expect(await row()).toMatchObject({
      group: 'in-hand',
      toPayMinor: 47568 + 5760 - 10000,
      amountIs: 'agreed',
    })
  })
})

describe('a clock that goes home without work', () => {
  const declined = async (fee: string | null) => {
    const { id: repairId } = await takeInPell(shop, { fee })
    const { id: estimateId } = await shop.act('estimates.write', { repairId, lines: estimateLines })
    await shop.act('estimates.send', { estimateId, way: 'telephone' })
    await shop.act('estimates.recordWord', {
      estimateId,
      answer: 'declined',
      who: 'R. Pell',
      way: 'telephone',
    })
    return (await shop.view('counter')).rows[0]
  }

  it('has the fee told for its estimate to pay, with its tax, and nothing of the estimate declined', async () => {
    expect(await declined('25.00')).toMatchObject({ group: 'to-collect', toPayMinor: 3000 })
    expect((await shop.view('counter')).toCollectMinor).toBe(3000)
  })

  it('has nothing to pay where no fee was told', async () => {
    expect(await declined(null)).toMatchObject({ group: 'to-collect', toPayMinor: 0 })
  })
})

describe('the estimated date', () => {
  it('is reckoned from the bench, what is away and the run-in, each told apart', async () => {
    const { repair } = await agreed()
    const before = (await shop.view('repairs/2201/date')).suggested
    expect(before.parts.map((p: { part: string }) => p.part)).toEqual(['bench', 'running-in'])
    await shop.act('bench.sendOut', {
      repairId: repair.id,
      vendor: 'A. Wheelcutter',
      work: 'repair',
      description: 'Wheel',
      dueOn: '2027-03-20',
    })
    const after = (await shop.view('repairs/2201/date')).suggested
    expect(after.parts.map((p: { part: string }) => p.part)).toEqual(['waiting', 'bench', 'running-in'])
    expect(after.readyOn > before.readyOn).toBe(true)
  })

  it('is reckoned for a clock being taken in, by the price book’s hours, a covered comeback at the head of the queue', async () => {
    const asked = async (more: Record<string, string>) =>
      (await shop.view(`date?${new URLSearchParams({ form: 'bracket', scope: 'service', ...more })}`))
        .suggested
    const told = (date: { parts: { part: string }[] }) => date.parts.map(({ part }) => part)
    const alone = await asked({ duration: '8-day' })
    expect(told(alone)).toEqual(['bench', 'running-in'])
    const { repair } = await agreed()
    const behind = await asked({ duration: '8-day' })
    expect(told(behind)).toEqual(['queue', 'bench', 'running-in'])
    expect(behind.readyOn > alone.readyOn).toBe(true)
    expect(await asked({ duration: '8-day', covered: 'yes' })).toEqual(alone)
    const ofRecord = await asked({ duration: '8-day', trains: '3' })
    expect(await asked({ clock: String(repair.clockId), form: 'cuckoo' })).toEqual(ofRecord)
    expect(told(await asked({ scope: 'set-up' }))).toEqual(['queue', 'bench'])
    expect(await asked({ scope: 'none' })).toBeNull()
  })

  it('is not reckoned while no hours are known', async () => {
    await takeInPell(shop)
    expect((await shop.view('repairs/2201/date')).suggested).toBeNull()
  })
})
