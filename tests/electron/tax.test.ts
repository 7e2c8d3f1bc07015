import { afterAll, beforeAll, expect, it } from 'vitest'
import { billedShop } from './billed-shop.ts'
import { type Shop, testSettings } from './handler-fixture.ts'

let shop: Shop
beforeAll(async () => {
  shop = await billedShop()
})
afterAll(() => shop.close())

interface Row {
  readonly taxMinor: number
  readonly taxableMinor: number
}
const sum = (rows: readonly Row[], of: keyof Row) => rows.reduce((total, row) => total + row[of], 0)

const quarters = [
  ['2027-01-01', '2027-03-31'],
  ['2027-04-01', '2027-06-30'],
] as const
const tax = ([from, to]: readonly [string, string]) => shop.view(`tax?from=${from}&to=${to}`)

const dueWith = async (due: 'invoice' | 'payment') =>
  shop.act('shop.changeSettings', { tax: { ...testSettings.tax, due } })

it('on invoices, ties to the cent with the invoices and credit notes of the period', async () => {
  await dueWith('invoice')
  for (const quarter of quarters) {
    const view = await tax(quarter)
    const { rows } = await shop.view('documents')
    const issued = rows.filter(
      (paper: { kind: string; issuedOn: string }) =>
        ['invoice', 'credit-note'].includes(paper.kind) &&
        paper.issuedOn >= quarter[0] &&
        paper.issuedOn <= quarter[1],
    )
    expect(issued.length).toBeGreaterThan(1)
    expect(view.taxMinor).toBe(sum(issued, 'taxMinor'))
    expect(sum(view.byKind, 'taxMinor')).toBe(view.taxMinor)
    expect(sum(view.byKind, 'taxableMinor')).toBe(sum(view.rows, 'taxableMinor'))
  }
})

it('tells the tax apart by code, rate and kind of line, and says what bore none', async () => {
  await dueWith('invoice')
  const { byKind, untaxed } = await tax(['2027-06-01', '2027-06-01'])
  expect(byKind).toEqual([
    { code: 'VAT', rate: '5', kind: 'fee', taxableMinor: 405, taxMinor: 20 },
    { code: 'VAT', rate: '20', kind: 'part', taxableMinor: 2097, taxMinor: 419 },
  ])
  // 7.25 × 31.33 = 227.1425
  expect(untaxed).toEqual([{ kind: 'labour', netMinor: 22714 }])
})

it('on payments, counts what was paid: a deposit with its invoice, a refund taken back', async () => {
  await dueWith('payment')
  const [first, second] = [await tax(quarters[0]), await tax(quarters[1])]
  // First quarter: 475.68 paid whole (79.28) and 100 of 475.68 (100 × 79.28 ÷ 475.68 = 16.67).
  expect(first).toMatchObject({ due: 'payment', taxMinor: 7928 + 1667 })
  // Second: 33.34 more of the second bill (133.34 × 79.28 ÷ 475.68 = 22.22), the fourth in and out again, and 100.00 of the
  // fifth (256.55: 4.39 tax): 100 × 0.20 ÷ 256.55 = 0.08 and 100 × 4.19 ÷ 256.55 = 1.63.
  expect(second.taxMinor).toBe(2222 - 1667 + 8 + 163)
  const year = await tax(['2027-01-01', '2027-12-31'])
  expect(year.taxMinor).toBe(first.taxMinor + second.taxMinor)
})

it('on payments, comes to the tax of the invoices once everything is paid', async () => {
  await dueWith('payment')
  const { rows } = await shop.view('owed')
  for (const { repairId, dueMinor } of rows)
    await shop.act('accounts.pay', { repairId, amount: (dueMinor / 100).toFixed(2), method: 'card' })
  const year = ['2027-01-01', '2027-12-31'] as const
  const paid = await tax(year)
  await dueWith('invoice')
  const { due, ...billed } = await tax(year)
  expect(due).toBe('invoice')
  expect({ ...billed, due: 'payment' }).toEqual(paid)
})

it('refuses a due day that is neither', async () => {
  const { status, body } = await shop.tryAct('shop.changeSettings', {
    tax: { ...testSettings.tax, due: 'never' },
  })
  expect(status).toBe(422)
  expect(body.problems[0]).toMatchObject({ field: 'tax.due' })
})
