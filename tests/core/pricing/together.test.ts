import fc from 'fast-check'
import { expect, test } from 'vitest'
import { repriced } from '../../../core/papers/price-input.ts'
import type { PriceLine, TaxRules } from '../../../core/pricing/price.ts'
import { priced } from '../../../core/pricing/price.ts'
import { pricedTogether } from '../../../core/pricing/together.ts'
import { taxRows } from '../../../core/tax/rows.ts'
import { must } from '../must.ts'

const cents = (most: number) => fc.integer({ min: 0, max: most }).map(n => (n / 100).toFixed(2))

const taxes = fc.constantFrom(
  [],
  [{ code: 'VAT', rate: '20' }],
  [{ code: 'VAT', rate: '5' }],
  [
    { code: 'GST', rate: '5' },
    { code: 'PST', rate: '9.975' },
  ],
)

const line: fc.Arbitrary<PriceLine> = fc.record({
  kind: fc.constantFrom<PriceLine['kind']>('labour', 'part', 'outside', 'fee'),
  quantity: cents(5000),
  unit: cents(1_000_000),
  taxes,
})

const rules = (basis: fc.Arbitrary<TaxRules['basis']>): fc.Arbitrary<TaxRules> =>
  fc.record({
    basis,
    mode: fc.constantFrom<TaxRules['mode']>('half-up', 'half-even', 'down'),
    inclusive: fc.boolean(),
  })

const sections = fc.array(fc.array(line, { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 5 })
const either = fc.constantFrom<TaxRules['basis']>('line', 'group')

const one = (lines: readonly PriceLine[], tax: TaxRules) => must(priced({ currency: 'GBP', tax, lines }))

test('what each repair comes to adds up to the estimate’s total to the cent, whatever the tax rules', () => {
  fc.assert(
    fc.property(sections, rules(either), (all, tax) => {
      const parts = all.map(lines => one(lines, tax))
      const whole = must(pricedTogether(parts))
      expect(whole.taxInclusive).toBe(parts.reduce((sum, part) => sum + part.taxInclusive, 0))
      expect(whole.taxExclusive + whole.tax).toBe(whole.taxInclusive)
      expect(whole.taxes.reduce((sum, group) => sum + group.tax, 0)).toBe(whole.tax)
      expect(whole.lines).toEqual(parts.flatMap(part => part.lines))
    }),
  )
})

test('with tax by line the whole is what all lines on one document come to', () => {
  fc.assert(
    fc.property(sections, rules(fc.constant('line')), (all, tax) => {
      const whole = must(pricedTogether(all.map(lines => one(lines, tax))))
      const { taxes: groups, ...rest } = one(all.flat(), tax)
      expect(whole).toMatchObject(rest)
      expect(new Set(whole.taxes.map(group => JSON.stringify(group)))).toEqual(
        new Set(groups.map(group => JSON.stringify(group))),
      )
    }),
  )
})

test('with tax on the sum of each rate every repair rounds for itself, as it is billed by itself', () => {
  const tax: TaxRules = { basis: 'group', mode: 'half-up', inclusive: false }
  const clock: PriceLine[] = [
    { kind: 'part', quantity: '1', unit: '0.02', taxes: [{ code: 'VAT', rate: '20' }] },
  ]
  // 20 % of 0.02 is 0.004: nothing on each clock, though 0.008 on both would round to a penny.
  expect(must(pricedTogether([one(clock, tax), one(clock, tax)])).tax).toBe(0)
  expect(one([...clock, ...clock], tax).tax).toBe(1)
})

test('a frozen paper with sections prices to the same again, and its tax rows add up to its tax', () => {
  fc.assert(
    fc.property(sections, rules(either), (all, tax) => {
      const parts = all.map(lines => one(lines, tax))
      const shown = (lines: readonly PriceLine[], nets: (typeof parts)[number]['lines']) =>
        lines.map((each, i) => ({ ...each, description: 'Work', working: [], net: there(nets[i]).net }))
      const whole = must(pricedTogether(parts))
      const paper = {
        currency: 'GBP',
        tax,
        lines: shown(all.flat(), whole.lines),
        priced: whole,
        sections: parts.map((part, i) => ({ lines: shown(there(all[i]), part.lines), priced: part })),
      }
      expect(must(repriced(paper))).toEqual(whole)
      expect(must(taxRows(paper)).reduce((sum, row) => sum + row.tax, 0)).toBe(whole.tax)
    }),
  )
})

/** The item, which is there. */
function there<T>(item: T | undefined): T {
  if (item === undefined) throw new Error('not there')
  return item
}
