import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { estimateLines, openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
let first: { id: number; number: number; ownerId: number }
let second: { id: number; number: number }
beforeEach(async () => {
  shop = await openTestShop()
  first = await takeInPell(shop)
  second = await takeInPell(shop, {
    owner: { id: first.ownerId },
    clock: { form: 'carriage', maker: 'Aubin, Thornbury', trains: 1, power: 'spring', duration: '8-day' },
    fault: 'Runs for a day, then stops.',
    belongings: [],
    condition: [],
  })
})
afterEach(() => shop.close())

const service = [{ kind: 'labour', description: 'Service of one train', quantity: '3', unit: '48.00' }]

const both = (more: object = {}) => ({
  repairId: first.id,
  lines: estimateLines,
  others: [{ repairId: second.id, lines: service, high: '200.00' }],
  ...more,
})

const view = (number: number) => shop.view(`repairs/${number}`)
const problemsOf = async (act: string, input: object) =>
  ((await shop.tryAct(act, input)).body.problems ?? []).map(
    (p: { code: string; field: string }) => `${p.code} ${p.field}`,
  )

async function sent() {
  const written = await shop.act('estimates.write', both())
  await shop.act('estimates.send', { estimateId: written.id, way: 'letter' })
  const [own, other] = (await view(first.number)).estimates[0].together
  return { written, own, other }
}

const word = (estimateId: number, more: object = {}) => ({
  estimateId,
  answer: 'go-ahead',
  who: 'Rosamund Pell',
  way: 'telephone',
  ...more,
})

describe('one estimate for several clocks of an owner', () => {
  it('has one number and one total, and every repair reads its own part of it', async () => {
    // 396.40 and 144.00, each with 20 %: 475.68 and 172.80.
    const written = await shop.act('estimates.write', both())
    expect(written).toMatchObject({ number: '2201/1', totalMinor: 47568 + 17280, taxMinor: 7928 + 2880 })
    const [one, two] = [await view(2201), await view(2202)]
    expect(one.estimates[0]).toMatchObject({ number: '2201/1', totalMinor: 47568, togetherMinor: 64848 })
    expect(two.estimates[0]).toMatchObject({ number: '2201/1', totalMinor: 17280, highMinor: 20000 })
    for (const { estimates } of [one, two])
      expect(estimates[0].together.map((each: { repairNumber: number }) => each.repairNumber)).toEqual([
        2201, 2202,
      ])
    expect(two.estimates[0].lines[0].description).toBe('Service of one train')
  })

  it('is sent once, from either repair, as one paper that names each clock with its sum', async () => {
    const { written, other } = await sent()
    const [one, two] = [await view(2201), await view(2202)]
    expect([one.standing.stage, two.standing.stage]).toEqual(['estimate-out', 'estimate-out'])
    expect(await problemsOf('estimates.send', { estimateId: other.estimateId, way: 'letter' })).toEqual([
      'estimate.sent estimateId',
    ])
    const paper = two.documents.find((d: { kind: string }) => d.kind === 'estimate')
    expect(paper).toMatchObject({ number: '2201/1', totalMinor: written.totalMinor })
    const { contents } = await shop.view(`documents/${paper.id}`)
    expect(contents.sections).toMatchObject([
      { repairNumber: '2201', clock: { form: 'bracket' }, priced: { taxInclusive: 47568 } },
      { repairNumber: '2202', clock: { form: 'carriage' }, range: { low: 17280, high: 20000 } },
    ])
    expect(contents.range).toEqual({ low: 64848, high: 47568 + 20000 })
    expect(contents.priced.taxInclusive).toBe(64848)
  })

  it('is answered for each clock by itself: one goes ahead, the other goes home', async () => {
    const { own, other } = await sent()
    await shop.act(
      'estimates.recordWord',
      word(own.estimateId, {
        limit: '500.00',
        others: [{ estimateId: other.estimateId, answer: 'declined' }],
      }),
    )
    const [one, two] = [await view(2201), await view(2202)]
    expect(one.standing.stage).toBe('go-ahead')
    expect(one.limit.agreedMinor).toBe(50000)
    expect(two.standing.stage).toBe('declined')
    expect(two.words).toMatchObject([{ answer: 'declined', who: 'Rosamund Pell', way: 'telephone' }])
    expect(one.invoiceLines.map((line: { description: string }) => line.description)).toEqual([
      'Overhaul of three trains',
      'Mainspring',
    ])
    expect(two.invoiceLines).toEqual([])
  })

  it('may be answered for one clock alone, from the page of either', async () => {
    const { other } = await sent()
    await shop.act('estimates.recordWord', word(other.estimateId))
    expect((await view(2202)).limit.agreedMinor).toBe(20000)
    expect((await view(2201)).standing.stage).toBe('estimate-out')
  })

  it('takes a new version for both, or for one alone, each repair counting its own', async () => {
    await sent()
    const alone = await shop.act('estimates.write', { repairId: second.id, lines: service })
    expect(alone.number).toBe('2202/2')
    const again = await shop.act('estimates.write', both())
    expect(again.number).toBe('2201/2')
    expect((await view(2202)).estimates.map((e: { number: string }) => e.number)).toEqual([
      '2201/1',
      '2202/2',
      '2201/2',
    ])
  })

  it('takes a supplement on one clock while the other is still to be answered', async () => {
    const { own } = await sent()
    await shop.act('estimates.recordWord', word(own.estimateId))
    const more = await shop.act('estimates.write', {
      repairId: first.id,
      supplement: true,
      lines: [{ kind: 'labour', description: 'One bush', quantity: '1', unit: '48.00' }],
      others: [{ repairId: second.id, lines: service }],
    })
    await shop.act('estimates.send', { estimateId: more.id, way: 'telephone' })
    await shop.act('estimates.recordWord', word(more.id))
    expect((await view(2201)).limit.agreedMinor).toBe(47568 + 5760)
    expect((await view(2202)).limit.agreedMinor).toBeNull()
  })
})

describe('what is refused on one estimate', () => {
  it('names every mistake in every repair’s lines at once', async () => {
    const wrong = both({
      lines: [{ ...estimateLines[0], unit: '-1' }],
      others: [
        { repairId: second.id, lines: [...service, { ...service[0], priced: { from: 'fee-credit' } }] },
      ],
    })
    expect(await problemsOf('estimates.write', wrong)).toEqual([
      'price.negativeUnit lines[0].unit',
      'book.noFeePaid others[0].lines[1].priced.from',
    ])
    const low = both({ high: '1', others: [{ repairId: second.id, lines: service, high: '1' }] })
    expect(await problemsOf('estimates.write', low)).toEqual([
      'estimate.highBelowLow high',
      'estimate.highBelowLow others[0].high',
    ])
  })

  it('takes a repair once, and none of another owner or one that is ready', async () => {
    const other = await takeInPell(shop, {
      owner: { name: 'Tobias Fenn', contacts: [] },
      clock: { form: 'wall', trains: 1, power: 'spring', duration: '8-day' },
      belongings: [],
    })
    const join = (repairId: number) => both({ others: [{ repairId, lines: service }] })
    expect(await problemsOf('estimates.write', join(first.id))).toEqual([
      'estimate.repairTwice others[0].repairId',
    ])
    expect(await problemsOf('estimates.write', join(other.id))).toEqual([
      'estimate.otherOwner others[0].repairId',
    ])
    const { own } = await sent()
    await shop.act('estimates.recordWord', word(own.estimateId))
    await shop.act('bench.declareReady', { repairId: first.id, reason: 'Case only' })
    const late = { repairId: second.id, lines: service, others: [{ repairId: first.id, lines: service }] }
    expect(await problemsOf('estimates.write', late)).toEqual(['standing.alreadyReady others[0].repairId'])
  })

  it('sends nothing that a newer version of one of its repairs has overtaken', async () => {
    const written = await shop.act('estimates.write', both())
    await shop.act('estimates.write', { repairId: second.id, lines: service })
    expect(await problemsOf('estimates.send', { estimateId: written.id, way: 'letter' })).toEqual([
      'estimate.newer estimateId',
    ])
  })

  it('answers only repairs that stand on the same estimate, each once, and not an overtaken version', async () => {
    const { own, other } = await sent()
    const beside = (estimateId: number) =>
      word(own.estimateId, { others: [{ estimateId, answer: 'declined' }] })
    expect(await problemsOf('estimates.recordWord', beside(own.estimateId))).toEqual([
      'estimate.notTogether others[0].estimateId',
    ])
    const alone = await shop.act('estimates.write', { repairId: second.id, lines: service })
    await shop.act('estimates.send', { estimateId: alone.id, way: 'letter' })
    expect(await problemsOf('estimates.recordWord', beside(alone.id))).toEqual([
      'estimate.notTogether others[0].estimateId',
    ])
    expect(await problemsOf('estimates.recordWord', word(other.estimateId))).toEqual([
      'estimate.newer estimateId',
    ])
  })
})

describe('a declined estimate', () => {
  it('lets the fee told at the take-in be billed, or the clock go home without one', async () => {
    const third = await takeInPell(shop, {
      owner: { id: first.ownerId },
      clock: { form: 'wall', trains: 1, power: 'spring', duration: '8-day' },
      belongings: [],
      condition: [],
      fee: '25.00',
    })
    const { id } = await shop.act('estimates.write', { repairId: third.id, lines: service })
    await shop.act('estimates.send', { estimateId: id, way: 'letter' })
    await shop.act('estimates.recordWord', word(id, { answer: 'declined' }))
    const { quoted, standing, invoiceLines } = await view(third.number)
    expect({ stage: standing.stage, fee: quoted.fee, invoiceLines }).toEqual({
      stage: 'declined',
      fee: 2500,
      invoiceLines: [],
    })
    expect(standing.next).toEqual(expect.arrayContaining(['hand-over', 'invoice']))
    const fee = { kind: 'fee', description: 'Fee', quantity: '1', unit: '25.00', work: 'estimate-fee' }
    const bill = { repairId: third.id, lines: [fee] }
    expect((await shop.act('accounts.invoice', bill)).totalMinor).toBe(3000)
  })
})

describe('two people at one repair', () => {
  it('tells the second writer that a version was written meanwhile, and writes nothing', async () => {
    const mine = { repairId: first.id, lines: service, seen: { last: null } }
    await shop.act('estimates.write', mine)
    const { body } = await shop.tryAct('estimates.write', mine)
    expect(body.problems[0]).toMatchObject({ code: 'estimate.writtenMeanwhile' })
    expect(body.problems[0].message).toContain('2201/1')
    expect((await view(2201)).estimates).toHaveLength(1)
    expect((await shop.act('estimates.write', { ...mine, seen: { last: 1 } })).number).toBe('2201/2')
  })

  it('tells the second that the owner’s word was recorded meanwhile, on whichever clock', async () => {
    const { own, other } = await sent()
    await shop.act('estimates.recordWord', word(other.estimateId, { answer: 'declined' }))
    const mine = word(own.estimateId, {
      seen: { last: null },
      others: [{ estimateId: other.estimateId, answer: 'go-ahead', seen: { last: null } }],
    })
    const { body } = await shop.tryAct('estimates.recordWord', mine)
    expect(body.problems).toHaveLength(1)
    expect(body.problems[0]).toMatchObject({ code: 'word.recordedMeanwhile', field: 'others[0]' })
    expect((await view(2201)).words).toEqual([])
  })

  it('does not let one estimated date overwrite another that the writer has not seen', async () => {
    const change = (estimatedOn: string, seen: string | null) =>
      shop.tryAct('counter.estimateDate', { repairId: first.id, estimatedOn, seen: { estimatedOn: seen } })
    expect((await change('2027-04-02', '2027-03-26')).status).toBe(200)
    const { body } = await change('2027-04-09', '2027-03-26')
    expect(body.problems[0]).toMatchObject({ code: 'repair.dateChanged' })
    expect(body.problems[0].message).toContain('2027-04-02')
    expect((await view(2201)).repair.estimatedOn).toBe('2027-04-02')
    expect((await change('2027-04-09', '2027-04-02')).status).toBe(200)
  })
})
