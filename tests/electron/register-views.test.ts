import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  bracketClock,
  estimateLines,
  openTestShop,
  rosamund,
  type Shop,
  takeInPell,
} from './handler-fixture.ts'
import { refused } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const named = (name: string) => ({ name, contacts: [] })

describe('the owners by name', () => {
  it('counts for each owner their own clocks and repairs', async () => {
    await takeInPell(shop)
    await shop.act('register.addOwner', named('Aster House School'))
    const { rows } = await shop.view('owners')
    expect(rows).toMatchObject([
      { name: 'Aster House School', clocks: 0, repairs: 0, lastAt: null },
      { name: 'Rosamund Pell', clocks: 1, repairs: 1, lastAt: '2027-03-01T09:20:00.000Z' },
    ])
  })

  it('leafs through them forwards and back again, each owner on one page', async () => {
    const namesakes: number[] = []
    for (let i = 0; i < 205; i++) {
      // Every third shares a name, whose owners follow each other by number.
      const shared = i % 3 === 0
      const name = shared ? 'tolliver, A.' : `Tolliver, ${String.fromCharCode(65 + (i % 26))}. ${i}`
      const { id } = await shop.act('register.addOwner', {
        ...named(name),
        otherThan: shared ? namesakes : [],
      })
      if (shared) namesakes.push(id)
    }
    const turn = (side: string, { name, id }: { name: string; id: number }) =>
      shop.view(`owners?${new URLSearchParams({ [`${side}Name`]: name, [`${side}Id`]: String(id) })}`)
    const first = await shop.view('owners')
    const second = await turn('after', first.rows.at(-1))
    const third = await turn('after', second.rows.at(-1))
    expect([first, second, third].map(page => [page.rows.length, page.previous, page.next])).toEqual([
      [100, false, true],
      [100, true, true],
      [5, true, false],
    ])
    const ids = [first, second, third].flatMap(page => page.rows.map((row: { id: number }) => row.id))
    expect(new Set(ids).size).toBe(205)
    expect(await turn('before', third.rows[0])).toEqual(second)
    expect(await turn('before', second.rows[0])).toEqual(first)
  })

  it('turns to the place of a name that nobody has', async () => {
    for (const name of ['Brandeis', 'Hallam', 'Quillfeather'])
      await shop.act('register.addOwner', named(name))
    const { rows, previous } = await shop.view('owners?afterName=g&afterId=0')
    expect(rows.map((row: { name: string }) => row.name)).toEqual(['Hallam', 'Quillfeather'])
    expect(previous).toBe(true)
  })
})

describe('an owner’s page', () => {
  it('keeps what was struck out apart, with its reason', async () => {
    const { id } = await shop.act('register.addOwner', rosamund)
    const { owner } = await shop.view(`owners/${id}`)
    await shop.act('register.strikeContact', { contactId: owner.contacts[0].id, reason: 'Given up' })
    const after = await shop.view(`owners/${id}`)
    expect(after.owner.contacts).toEqual([])
    expect(after.struckContacts).toMatchObject([{ value: '+442079460018', struckReason: 'Given up' }])
  })

  it('sums up what is due on all repairs, below nothing where the shop holds money', async () => {
    const repair = await takeInPell(shop)
    expect((await shop.view(`owners/${repair.ownerId}`)).dueMinor).toBe(0)
    await shop.act('accounts.pay', { repairId: repair.id, amount: '50.00', method: 'cash' })
    expect((await shop.view(`owners/${repair.ownerId}`)).dueMinor).toBe(-5000)
  })

  it('of a duplicate says which owner it was merged into', async () => {
    const kept = await shop.act('register.addOwner', rosamund)
    const twice = await shop.act('register.addOwner', named('Rosamund Pel'))
    await shop.act('register.mergeOwners', { ownerId: twice.id, intoId: kept.id })
    expect((await shop.view(`owners/${twice.id}`)).mergedInto).toEqual({ id: kept.id, name: 'Rosamund Pell' })
    expect((await shop.view('owners')).rows).toHaveLength(1)
  })
})

describe('a clock’s page', () => {
  it('says what the warranty was given on, whether it covers today and why, and where the clock is', async () => {
    const repair = await takeInPell(shop)
    expect(await shop.view(`clocks/${repair.clockId}`)).toMatchObject({ inShop: 2201 })
    const estimate = await shop.act('estimates.write', { repairId: repair.id, lines: estimateLines })
    await shop.act('estimates.send', { estimateId: estimate.id, way: 'in-person' })
    await shop.act('estimates.recordWord', {
      estimateId: estimate.id,
      answer: 'go-ahead',
      who: 'Rosamund Pell',
      way: 'in-person',
    })
    await shop.act('bench.declareReady', { repairId: repair.id, reason: 'Tested before' })
    const { invoiceLines, belongings } = await shop.view('repairs/2201')
    await shop.act('accounts.invoice', { repairId: repair.id, lines: invoiceLines })
    await shop.act('accounts.pay', { repairId: repair.id, amount: '475.68', method: 'cash' })
    const back = belongings.filter((b: { custody: string }) => b.custody === 'received')
    await shop.act('counter.handOver', {
      repairId: repair.id,
      toName: 'Rosamund Pell',
      belongings: back.map((b: { id: number }) => ({ id: b.id, returned: true })),
    })
    const { inShop, visits, cautions } = await shop.view(`clocks/${repair.clockId}`)
    expect(inShop).toBeNull()
    expect(cautions).toContain('silvered-dial')
    expect(visits[0]).toMatchObject({
      warranty: { scope: 'service', startOn: '2027-03-01' },
      cover: { covered: true, lastDay: '2028-03-01', reasons: [{ code: 'inTerm' }] },
      comebackOf: null,
    })
    const other = await shop.act('register.addOwner', named('Aster House School'))
    await shop.act('register.passClock', { clockId: repair.clockId, ownerId: other.id })
    const passed = await shop.view(`clocks/${repair.clockId}`)
    expect(passed.visits[0].cover).toMatchObject({
      covered: false,
      reasons: [{ code: 'inTerm' }, { code: 'excluded', values: { cause: 'not-transferable' } }],
    })
    await shop.act('register.passClock', { clockId: repair.clockId, ownerId: repair.ownerId })
    await takeInPell(shop, {
      owner: { id: repair.ownerId },
      clock: { id: repair.clockId },
      comebackOf: repair.id,
      covered: true,
    })
    expect((await shop.view(`clocks/${repair.clockId}`)).visits[0].comebackOf).toBe(2201)
  })

  it('keeps the size of a clock beside its description, and neither writes over the other', async () => {
    const { clockId } = await takeInPell(shop)
    const size = { heightMm: 415, widthMm: 280, depthMm: null, weightG: 8200 }
    await shop.act('register.measureClock', { clockId, ...size })
    await shop.act('register.changeClock', { clockId, form: 'bracket', maker: 'Corvane' })
    expect((await shop.view(`clocks/${clockId}`)).clock).toMatchObject({ ...size, maker: 'Corvane' })
    const { rows } = await shop.view('dayBook')
    expect(rows.find((row: { act: string }) => row.act === 'register.measureClock')).toMatchObject({
      clockId,
    })
  })

  it('refuses a size nobody can have measured, and one that somebody else changed since it was seen', async () => {
    const { clockId } = await takeInPell(shop)
    const wrong = { clockId, heightMm: 0, widthMm: 10_001, depthMm: 2.5, weightG: -1 }
    expect(refused(await shop.tryAct('register.measureClock', wrong)).problems).toEqual([
      'input.tooSmall heightMm',
      'input.tooLarge widthMm',
      'input.wrongType depthMm',
      'input.tooSmall weightG',
    ])
    const unmeasured = { heightMm: null, widthMm: null, depthMm: null, weightG: null }
    await shop.act('register.measureClock', { clockId, heightMm: 415, seen: unmeasured })
    const late = await shop.tryAct('register.measureClock', { clockId, heightMm: 416, seen: unmeasured })
    expect(refused(late).problems).toEqual(['record.changedMeanwhile heightMm'])
    expect(refused(await shop.tryAct('register.measureClock', { clockId: 999 })).problems).toEqual([
      'clock.unknown clockId',
    ])
  })

  it('is not there for a number no clock has', async () => {
    await shop.act('register.addOwner', { ...rosamund, name: bracketClock.maker })
    expect((await shop.ask('/api/pages/clocks/9')).status).toBe(404)
  })
})
