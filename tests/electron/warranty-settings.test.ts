import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Settings } from '../../core/shop/settings.ts'
import { warranties } from '../../db/schema/index.ts'
import { openTestShop, type Shop, testSettings } from './handler-fixture.ts'
import { agreedRepair, handOver } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const at = (instant: string) => {
  shop.clock.at = instant
}

const setWarranty = (more: Partial<Settings['warranty']>) =>
  shop.act('shop.changeSettings', { warranty: { ...testSettings.warranty, ...more } })

/** A clock that was ready on 6 April by the shop's clocks, invoiced on the 8th and collected on the 10th. */
async function collected(more: Record<string, unknown> = {}) {
  const taken = await agreedRepair(shop, { belongings: [], ...more })
  // Half past midnight on the 6th in summer time.
  at('2027-04-05T23:30:00.000Z')
  await shop.act('bench.declareReady', { repairId: taken.id, reason: 'Ran for a week on the bench' })
  at('2027-04-08T10:00:00.000Z')
  const lines = [{ kind: 'labour', description: 'Service', quantity: '1', unit: '48.00' }]
  await shop.act('accounts.invoice', { repairId: taken.id, lines })
  at('2027-04-10T10:00:00.000Z')
  await handOver(shop, taken)
  return taken
}

const given = () => shop.ledger.read.select().from(warranties).all()

describe('a warranty', () => {
  it.each([
    ['collection', '2027-04-10', '2028-04-10'],
    ['invoice', '2027-04-08', '2028-04-08'],
    ['ready', '2027-04-06', '2028-04-06'],
  ] as const)('that begins with the %s runs from %s to %s', async (startsOn, startOn, lastDay) => {
    await setWarranty({ startsOn })
    await collected()
    expect(given()).toMatchObject([{ startOn, lastDay, convention: 'same-date' }])
  })

  it('that ends a day before the date it began on is a year less a day', async () => {
    await setWarranty({ convention: 'day-before' })
    await collected()
    expect(given()).toMatchObject([
      { startOn: '2027-04-10', lastDay: '2028-04-09', convention: 'day-before' },
    ])
  })

  it('is as long as the shop answers for that kind of work', async () => {
    await collected({ scope: 'repair' })
    expect(given()).toMatchObject([{ scope: 'repair', length: 90, unit: 'days', lastDay: '2027-07-09' }])
  })

  it('is not given for work the shop does not answer for', async () => {
    await setWarranty({ terms: { ...testSettings.warranty.terms, service: null } })
    await collected()
    expect(given()).toEqual([])
  })

  it('keeps the terms that it was given under', async () => {
    await setWarranty({ onComeback: 'restart', pausesInShop: false, exclusions: ['glass'] })
    await collected()
    await setWarranty({})
    expect(given()).toMatchObject([{ onComeback: 'restart', pausesInShop: false, exclusions: ['glass'] }])
  })
})

describe('a comeback put right within the term', () => {
  /** The cover of a second comeback on the day, after a first that was here from 1 to 11 June. */
  async function coverAfterComeback(on: string) {
    const first = await collected()
    const again = {
      owner: { id: first.ownerId },
      clock: { id: first.clockId },
      fault: 'Stopped again.',
      comebackOf: first.id,
      covered: true,
    }
    at('2027-06-01T10:00:00.000Z')
    const back = await shop.act('counter.takeIn', again)
    at('2027-06-11T10:00:00.000Z')
    await shop.act('bench.declareReady', { repairId: back.id, reason: 'Ran for a week on the bench' })
    await handOver(shop, back)
    at(`${on}T10:00:00.000Z`)
    const last = await shop.act('counter.takeIn', { ...again, covered: false })
    return (await shop.view(`repairs/${last.number}`)).comeback.cover
  }

  it('adds its days to the term', async () => {
    expect(await coverAfterComeback('2028-04-20')).toMatchObject({ covered: true, lastDay: '2028-04-20' })
  })

  it('gives no day more than those it was here', async () => {
    expect(await coverAfterComeback('2028-04-21')).toMatchObject({ covered: false, lastDay: '2028-04-20' })
  })

  it('adds none where the shop’s terms do not pause', async () => {
    await setWarranty({ pausesInShop: false })
    expect(await coverAfterComeback('2028-04-11')).toMatchObject({ covered: false, lastDay: '2028-04-10' })
  })

  it('begins the term anew at its hand-over where they say so', async () => {
    await setWarranty({ onComeback: 'restart' })
    expect(await coverAfterComeback('2028-06-11')).toMatchObject({
      covered: true,
      began: '2027-06-11',
      lastDay: '2028-06-11',
    })
  })
})
