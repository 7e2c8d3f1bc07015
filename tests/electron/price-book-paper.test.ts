import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { en } from '../../core/words/en/index.ts'
import { textOf } from '../papers/reading.ts'
import { openTestShop, type Shop, takeInPell, testSettings } from './handler-fixture.ts'

// Another program reads the paper here: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 30_000 })

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
  await shop.act('shop.changeSettings', { prices: { ...testSettings.prices, rushPercent: '50' } })
})
afterEach(() => shop.close())

it('a line of the price book prints with the steps its owner may read, and the figures they come to', async () => {
  const repair = await takeInPell(shop)
  const line = {
    kind: 'labour',
    description: 'Overhaul of three trains',
    quantity: '5',
    unit: '48',
    charge: '120',
    priced: { from: 'labour', work: 'overhaul', rush: true },
  }
  const { id } = await shop.act('estimates.write', { repairId: repair.id, supplement: false, lines: [line] })
  const { documentId } = await shop.act('estimates.send', { estimateId: id, way: 'letter' })
  const response = await shop.handle(new Request(`http://ledger/papers/${documentId}.pdf`))
  const text = textOf(Buffer.from(await response.arrayBuffer()))
  for (const step of [
    en.workingSteps.hoursAtRate({ hours: '5', rate: '48' }),
    en.workingSteps.rush({ percent: '50', added: '120.00' }),
  ])
    expect(text).toContain(step)
  expect(text).not.toContain(en.workingSteps.bookHours({ hours: '5' }))
  expect(text).toMatch(/Overhaul of three trains 5 ?h 48\.00 VAT 20% 360\.00/)
  expect(text).toContain('Total £432.00')
})
