import { openTestShop, type Shop, testSettings } from './handler-fixture.ts'
import { agreedRepair } from './work-fixture.ts'

/** The lines of a bill whose taxes differ by kind: labour untaxed, the part at the shop's rate, the fee at a lower one. */
export const mixedLines = [
  { kind: 'labour', description: 'Overhaul of three trains', quantity: '7.25', unit: '31.33', taxes: [] },
  {
    kind: 'part',
    description: 'Mainspring',
    quantity: '3',
    unit: '6.99',
    taxes: [{ code: 'VAT', rate: '20' }],
  },
  { kind: 'fee', description: '=Storage', quantity: '1', unit: '4.05', taxes: [{ code: 'VAT', rate: '5' }] },
]

/** A repair invoiced over `lines`; after a deposit where one is said. */
export async function invoicedRepair(
  shop: Shop,
  { lines, deposit, more = {} }: { lines?: unknown; deposit?: string; more?: Record<string, unknown> } = {},
) {
  const repair = await agreedRepair(shop, more)
  if (deposit) await shop.act('accounts.pay', { repairId: repair.id, amount: deposit, method: 'cash' })
  await shop.act('bench.declareReady', { repairId: repair.id, reason: 'Tested before' })
  const { invoiceLines } = await shop.view(`repairs/${repair.number}`)
  const invoice = await shop.act('accounts.invoice', { repairId: repair.id, lines: lines ?? invoiceLines })
  return { ...repair, invoice: invoice as { id: number; number: string; totalMinor: number } }
}

const pay = (shop: Shop, repairId: number, amount: string, method = 'card') =>
  shop.act('accounts.pay', { repairId, amount, method })

const on = (shop: Shop, date: string) => {
  shop.clock.at = `${date}T10:00:00.000Z`
}

/**
 * A shop with five bills over two quarters: paid at once, with a deposit and in parts, unpaid, credited and given back, and of
 * mixed taxes half paid. One owner's name would be a formula in a spreadsheet.
 */
export async function billedShop(own: Partial<typeof testSettings.shop> = {}): Promise<Shop> {
  const shop = await openTestShop()
  await shop.act('shop.changeSettings', { shop: { ...testSettings.shop, ...own } })
  const first = await invoicedRepair(shop)
  await pay(shop, first.id, '475.68')
  on(shop, '2027-03-10')
  const second = await invoicedRepair(shop, {
    deposit: '100.00',
    more: {
      owner: { name: '=HYPERLINK("x")' },
      clock: { form: 'wall', trains: 2, power: 'spring', duration: '8-day' },
    },
  })
  on(shop, '2027-04-02')
  await pay(shop, second.id, '33.33', 'cash')
  await pay(shop, second.id, '0.01', 'transfer')
  await invoicedRepair(shop)
  on(shop, '2027-04-20')
  const fourth = await invoicedRepair(shop)
  await pay(shop, fourth.id, '475.68')
  on(shop, '2027-05-03')
  await shop.act('accounts.credit', { invoiceId: fourth.invoice.id, reason: 'Wrong part' })
  await shop.act('accounts.refund', { repairId: fourth.id, amount: '475.68', method: 'card' })
  on(shop, '2027-06-01')
  const fifth = await invoicedRepair(shop, { lines: mixedLines })
  await pay(shop, fifth.id, '100.00')
  return shop
}
