import { expect, test } from 'vitest'
import { minorText } from '../../../core/money/minor.ts'
import {
  type PriceInput,
  type PriceLine,
  priced,
  type Tax,
  type TaxRules,
} from '../../../core/pricing/price.ts'
import { must } from '../must.ts'

const byGroup: TaxRules = { basis: 'group', mode: 'half-up', inclusive: false }
const byLine: TaxRules = { ...byGroup, basis: 'line' }
const vat = (rate: string, code = 'S'): Tax[] => [{ code, rate }]

const line = (
  quantity: string,
  unit: string,
  taxes: readonly Tax[],
  more: Partial<PriceLine> = {},
): PriceLine => ({
  kind: 'part',
  quantity,
  unit,
  taxes,
  ...more,
})

/** The totals as texts in major units. */
function told(input: PriceInput) {
  const result = must(priced(input))
  const text = (amount: typeof result.sum) => minorText(amount, input.currency)
  return {
    lines: result.lines.map(({ net }) => text(net)),
    groups: result.taxes.map(({ code, rate, taxable, tax }) => [code, rate, text(taxable), text(tax)]),
    sum: text(result.sum),
    allowances: text(result.allowances),
    charges: text(result.charges),
    taxExclusive: text(result.taxExclusive),
    tax: text(result.tax),
    taxInclusive: text(result.taxInclusive),
    due: text(result.due),
  }
}

// Streamlined Sales and Use Tax Agreement §324, as N.D.C.C. 57-39.4-25 and R.I. Gen. Laws 44-18.1-25: carried to
// the third decimal,
// a third decimal above 4 rounds up. Standards reference §1, T1.1.
test.each([
  ['14.50', '8.875', '1.29'],
  ['10.50', '7.25', '0.76'],
  ['14.99', '6.25', '0.94'],
  ['10.10', '4.95', '0.50'],
  // T1.2: no double rounding; raw 0.13455.
  ['2.07', '6.5', '0.13'],
])('SSUTA §324: %s at %s %% is %s of tax', (amount, rate, tax) => {
  for (const rules of [byLine, byGroup])
    expect(told({ currency: 'USD', tax: rules, lines: [line('1', amount, vat(rate))] }).tax).toBe(tax)
})

// SSUTA §324 item and invoice basis. T1.3.
test('SSUTA §324: three lines of 0.33 at 7 % are 0.06 by line and 0.07 by document', () => {
  const lines = Array.from({ length: 3 }, () => line('1', '0.33', vat('7')))
  expect(told({ currency: 'USD', tax: byLine, lines }).tax).toBe('0.06')
  expect(told({ currency: 'USD', tax: byGroup, lines }).tax).toBe('0.07')
})

// SSUTA §324: state and local rates may be aggregated first. T1.4.
test('SSUTA §324: 1.50 at 4.3 % and 2.3 % is 0.09 apart and 0.10 aggregated, whatever the order of the taxes', () => {
  const taxes = [...vat('4.3', 'state'), ...vat('2.3', 'city')]
  const of = (aggregate: boolean, given: Tax[]) =>
    told({ currency: 'USD', tax: { ...byLine, aggregate }, lines: [line('1', '1.50', given)] })
  expect(of(false, taxes).tax).toBe('0.09')
  expect(of(true, taxes).groups).toEqual([['city+state', '6.6', '1.50', '0.10']])
  expect(of(true, taxes.toReversed())).toEqual(of(true, taxes))
})

// HMRC VATREC12010–12030 (VAT Notice 700 ¶17.5–17.6): invoice traders may round total VAT down to a penny.
test('VAT Notice 700: the total may be rounded down, half up being the normal rule', () => {
  const lines = [line('1', '9.99', vat('20'))]
  expect(told({ currency: 'GBP', tax: { ...byGroup, mode: 'down' }, lines }).tax).toBe('1.99')
  expect(told({ currency: 'GBP', tax: byGroup, lines }).tax).toBe('2.00')
})

// CEN EN 16931 validation artefacts 1.3.16, Peppol BIS Billing 3 allowance example: BR-CO-10 to -17, BR-S-08. T1.7.
test('EN 16931: the Peppol allowance example comes to 6125.00 due', () => {
  const standard = vat('25')
  expect(
    told({
      currency: 'EUR',
      tax: byGroup,
      lines: [
        line('10', '450', standard, { unitDiscount: '40', charge: '1', allowance: '101' }),
        line('10', '200', vat('0', 'E'), { per: '2' }),
        line('10', '100', standard, { charge: '1', allowance: '101' }),
      ],
      charges: [{ amount: '200', taxes: standard }],
      allowances: [{ amount: '200', taxes: standard }],
      paid: '1000',
    }),
  ).toEqual({
    lines: ['4000.00', '1000.00', '900.00'],
    groups: [
      ['S', '25', '4900.00', '1225.00'],
      ['E', '0', '1000.00', '0.00'],
    ],
    sum: '5900.00',
    allowances: '200.00',
    charges: '200.00',
    taxExclusive: '5900.00',
    tax: '1225.00',
    taxInclusive: '7125.00',
    due: '6125.00',
  })
})

// CEN EN 16931 example 8, 21 %. T1.9: tax by group 190.87 where per-line rounding would give 190.88.
test('EN 16931: CEN example 8 has unit prices of five places and comes to 1099.78', () => {
  const of = (quantity: string, unit: string, per?: string) =>
    line(quantity, unit, vat('21'), per ? { per } : {})
  const lines = [
    of('16000', '0.00880'),
    of('16000', '0.00101'),
    of('132', '15.24', '12'),
    of('58', '1.53'),
    of('1', '441', '12'),
    of('1', '678', '12'),
    ...['83.34', '190.31', '64.21', '64.46'].map(unit => of('1', unit)),
  ]
  const result = told({ currency: 'EUR', tax: byGroup, lines })
  expect(result.lines.slice(0, 6)).toEqual(['140.80', '16.16', '167.64', '88.74', '36.75', '56.50'])
  expect([result.taxExclusive, result.tax, result.taxInclusive]).toEqual(['908.91', '190.87', '1099.78'])
  expect(told({ currency: 'EUR', tax: byLine, lines }).tax).toBe('190.88')
})

// EN 16931 BR-CO-16: due = tax inclusive − paid + rounding.
test('EN 16931 BR-CO-16: a rounding amount changes only what is due', () => {
  const result = told({
    currency: 'EUR',
    tax: byGroup,
    lines: [line('1', '9.98', vat('0'))],
    rounding: '0.02',
  })
  expect([result.taxInclusive, result.due]).toEqual(['9.98', '10.00'])
})

// T1.12: labour stated separately is taxed in some places (Tennessee) and not in others (Minnesota).
test('taxability by kind of line: parts 80 and labour 20 at 10 % are 10.00 in all, 8.00 on parts only', () => {
  const of = (labourTaxes: Tax[]) =>
    told({
      currency: 'USD',
      tax: byGroup,
      lines: [line('1', '80', vat('10')), line('1', '20', labourTaxes, { kind: 'labour' })],
    }).tax
  expect(of(vat('10'))).toBe('10.00')
  expect(of([])).toBe('8.00')
})

// Prices that include tax: tax = gross × r ÷ (100 + r), net by subtraction. T1.14, T1.15.
test.each([
  ['100.00', '20', '16.67', '83.33'],
  ['80.00', '5', '3.81', '76.19'],
])('inclusive: %s at %s %% holds %s of tax and %s net', (gross, rate, tax, net) => {
  const result = told({
    currency: 'GBP',
    tax: { ...byGroup, inclusive: true },
    lines: [line('1', gross, vat(rate))],
  })
  expect([result.tax, result.taxExclusive, result.taxInclusive, result.lines]).toEqual([
    tax,
    net,
    gross,
    [net],
  ])
})
