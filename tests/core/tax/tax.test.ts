import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Minor, minor } from '../../../core/money/minor.ts'
import type { PaperLine } from '../../../core/papers/contents.ts'
import { priced } from '../../../core/pricing/price.ts'
import type { PriceInput } from '../../../core/pricing/price-input.ts'
import { type Account, taxByDay, taxSettled } from '../../../core/tax/on-payment.ts'
import { addedUp, type TaxRow, taxRows, turned } from '../../../core/tax/rows.ts'
import { must } from '../must.ts'
import { anyPriceInput } from './any-document.ts'

const rowsOf = (input: PriceInput): TaxRow[] => {
  const figures = must(priced(input))
  const lines: PaperLine[] = input.lines.map((line, i) => ({
    ...line,
    description: 'Work',
    net: figures.lines[i]?.net ?? minor(0),
    working: [],
  }))
  const adjusted = (amounts: PriceInput['allowances']) =>
    (amounts ?? []).map(amount => ({ ...amount, description: 'Adjusted' }))
  const money = { currency: input.currency, tax: input.tax, lines, priced: figures }
  return must(taxRows({ ...money, allowances: adjusted(input.allowances), charges: adjusted(input.charges) }))
}

/** The tax of the days from `from` to `to`. */
const taxOnPayments = (account: Account, from: string, to: string): TaxRow[] =>
  addedUp(taxByDay(account).flatMap(({ on, rows }) => (on >= from && on <= to ? rows : []))).filter(
    ({ taxable, tax }) => taxable !== 0 || tax !== 0,
  )

const total = (rows: readonly TaxRow[], of: 'tax' | 'taxable') => rows.reduce((sum, row) => sum + row[of], 0)

const row = (code: string, kind: TaxRow['kind'], taxable: number, tax: number): TaxRow => ({
  code,
  rate: '20',
  kind,
  taxable: minor(taxable),
  tax: minor(tax),
})

describe('the tax of a document by kind of line', () => {
  it('shares a group’s once rounded tax over its kinds so that they add up to it', () => {
    // Three lines of 0.33 at 7 % bear 0.07 together (SSUTA §324, invoice basis): 0.03, 0.02, 0.02.
    const line = (kind: 'labour' | 'part' | 'fee') => ({
      kind,
      quantity: '1',
      unit: '0.33',
      taxes: [{ code: 'ST', rate: '7' }],
    })
    const rules = { basis: 'group', mode: 'half-up', inclusive: false } as const
    const rows = rowsOf({ currency: 'USD', tax: rules, lines: [line('labour'), line('part'), line('fee')] })
    expect(rows.map(({ kind, tax }) => [kind, tax])).toEqual([
      ['labour', 3],
      ['part', 2],
      ['fee', 2],
    ])
  })

  it('has a row without a code at no rate for what bears no tax', () => {
    const rules = { basis: 'group', mode: 'half-up', inclusive: false } as const
    const lines = [{ kind: 'fee', quantity: '1', unit: '25', taxes: [] } as const]
    expect(rowsOf({ currency: 'GBP', tax: rules, lines })).toEqual([
      { code: '', rate: '0', kind: 'fee', taxable: 2500, tax: 0 },
    ])
  })

  it('adds up to the document’s groups and total to the minor unit, whatever the rules', () => {
    fc.assert(
      fc.property(anyPriceInput, input => {
        const figures = must(priced(input))
        const rows = rowsOf(input)
        for (const group of figures.taxes) {
          const own = rows.filter(({ code, rate }) => code === group.code && rate === group.rate)
          expect(total(own, 'tax')).toBe(group.tax)
          expect(total(own, 'taxable')).toBe(group.taxable)
        }
        expect(total(rows, 'tax')).toBe(figures.tax)
      }),
      { numRuns: 300 },
    )
  })
})

describe('tax that is due with the payment', () => {
  it('is the part of the invoice’s tax that the payment is of the invoice', () => {
    expect(taxSettled([row('VAT', 'labour', 10_000, 2_000)], minor(12_000), minor(3_000))).toEqual([
      row('VAT', 'labour', 2_500, 500),
    ])
  })

  it('comes to exactly the invoice’s tax when all payments add up to the invoice, whatever their sizes', () => {
    const parts = fc.array(fc.integer({ min: 1, max: 100_000 }), { minLength: 1, maxLength: 12 })
    fc.assert(
      fc.property(anyPriceInput, parts, (input, sizes) => {
        const { taxInclusive } = must(priced(input))
        fc.pre(taxInclusive > 0)
        const rows = rowsOf(input)
        const paid = cutBy(taxInclusive, sizes)
        const account: Account = {
          billed: [{ on: '2027-03-01', total: taxInclusive, rows }],
          paid: paid.map((amount, i) => ({ on: day(i), amount })),
        }
        const daily = paid.map((_, i) => taxOnPayments(account, day(i), day(i)))
        const expected = rows.filter(({ taxable, tax }) => taxable !== 0 || tax !== 0)
        const all = addedUp(daily.flat()).filter(({ taxable, tax }) => taxable !== 0 || tax !== 0)
        expect(sorted(all)).toEqual(sorted(expected))
        expect(total(daily.flat(), 'tax')).toBe(must(priced(input)).tax)
      }),
      { numRuns: 200 },
    )
  })

  it('counts a deposit on the day of its invoice, and nothing before', () => {
    const account: Account = {
      billed: [{ on: '2027-04-02', total: minor(12_000), rows: [row('VAT', 'labour', 10_000, 2_000)] }],
      paid: [{ on: '2027-03-20', amount: minor(6_000) }],
    }
    expect(taxOnPayments(account, '2027-01-01', '2027-03-31')).toEqual([])
    expect(taxOnPayments(account, '2027-04-01', '2027-06-30')).toEqual([row('VAT', 'labour', 5_000, 1_000)])
  })

  it('counts no more than was billed when more was paid', () => {
    expect(taxSettled([row('VAT', 'part', 100, 20)], minor(120), minor(500))).toEqual([
      row('VAT', 'part', 100, 20),
    ])
  })

  it('settles nothing where nothing was paid, where it was given back, or where nothing was billed', () => {
    const rows = [row('VAT', 'part', 100, 20)]
    expect(taxSettled(rows, minor(120), minor(0))).toEqual([])
    expect(taxSettled(rows, minor(120), minor(-1))).toEqual([])
    expect(taxSettled([], minor(0), minor(120))).toEqual([])
    expect(taxSettled(rows, minor(120), minor(1))).not.toEqual([])
  })

  it('rounds half up what of the amount without tax is settled', () => {
    expect(taxSettled([row('VAT', 'part', 101, 19)], minor(120), minor(60))).toMatchObject([{ taxable: 51 }])
  })

  it('counts a payment of a single cent', () => {
    const rows = [row('VAT', 'part', 100, 20)]
    const account = {
      billed: [{ on: '2027-03-01', total: minor(120), rows }],
      paid: [{ on: '2027-03-02', amount: minor(1) }],
    }
    expect(taxByDay(account)[1]?.rows).toEqual([row('VAT', 'part', 1, 0)])
  })

  it('says nothing of a day on which nothing more was settled', () => {
    const account: Account = {
      billed: [{ on: '2027-03-01', total: minor(120), rows: [row('VAT', 'part', 100, 20)] }],
      paid: [
        { on: '2027-03-02', amount: minor(120) },
        { on: '2027-03-03', amount: minor(5) },
      ],
    }
    expect(taxByDay(account)).toEqual([
      { on: '2027-03-01', rows: [] },
      { on: '2027-03-02', rows: [row('VAT', 'part', 100, 20)] },
      { on: '2027-03-03', rows: [] },
    ])
  })

  it('takes back what was counted when the invoice is credited, on the day of the credit note', () => {
    const rows = [row('VAT', 'labour', 10_000, 2_000)]
    const account: Account = {
      billed: [
        { on: '2027-03-01', total: minor(12_000), rows },
        { on: '2027-05-01', total: minor(-12_000), rows: turned(rows) },
      ],
      paid: [
        { on: '2027-03-02', amount: minor(12_000) },
        { on: '2027-05-03', amount: minor(-12_000) },
      ],
    }
    expect(taxOnPayments(account, '2027-01-01', '2027-03-31')).toEqual(rows)
    expect(taxOnPayments(account, '2027-04-01', '2027-06-30')).toEqual(turned(rows))
    expect(taxOnPayments(account, '2027-01-01', '2027-12-31')).toEqual([])
  })

  it('shares a payment over several taxes to within a minor unit, adding up to the payment', () => {
    const rows = [row('A', 'labour', 1_000, 70), row('B', 'part', 500, 100), row('', 'fee', 330, 0)]
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2_000 }), amount => {
        const settled = taxSettled(rows, minor(2_000), minor(amount))
        settled.forEach(({ tax }, i) => {
          expect(Math.abs(tax - ((rows[i]?.tax ?? 0) * amount) / 2_000)).toBeLessThan(1)
        })
      }),
    )
  })
})

const day = (n: number) => `2027-03-${String(n + 1).padStart(2, '0')}`

/** The total cut into as many parts as there are sizes; parts may be larger than the rest would allow, the last takes what is left. */
function cutBy(whole: Minor, sizes: readonly number[]): Minor[] {
  const all = sizes.reduce((sum, size) => sum + size, 0)
  const firsts = sizes.slice(1).map(size => minor(Number((BigInt(whole) * BigInt(size)) / BigInt(all))))
  return [...firsts, minor(whole - firsts.reduce((sum, part) => sum + part, 0))]
}

const sorted = (rows: readonly TaxRow[]) =>
  rows.map(r => JSON.stringify([r.code, r.rate, r.kind, r.taxable, r.tax])).sort()
