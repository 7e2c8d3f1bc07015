import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { minor } from '../../../core/money/minor.ts'
import {
  type Priced,
  type PriceInput,
  type PriceLine,
  priced,
  type TaxRules,
} from '../../../core/pricing/price.ts'
import { must, refusals } from '../must.ts'

const Exact = Decimal.clone({ precision: 200 })

const decimal = (most: number, places: number) =>
  fc
    .tuple(fc.integer({ min: 0, max: most }), fc.integer({ min: 0, max: places }))
    .map(([units, scale]) => new Exact(units).div(new Exact(10).pow(scale)).toFixed(scale))

/** Percent, up to 30 with three places. */
const rate = fc.integer({ min: 0, max: 30_000 }).map(units => new Exact(units).div(1000).toFixed())

const taxes = fc.uniqueArray(fc.record({ code: fc.constantFrom('A', 'B', 'C'), rate }), {
  maxLength: 3,
  selector: tax => tax.code,
})

const rules: fc.Arbitrary<TaxRules> = fc.record({
  basis: fc.constantFrom<TaxRules['basis']>('line', 'group'),
  mode: fc.constantFrom<TaxRules['mode']>('half-up', 'half-even', 'down'),
  inclusive: fc.boolean(),
  aggregate: fc.boolean(),
})

const signed = (text: fc.Arbitrary<string>) =>
  fc.tuple(text, fc.boolean()).map(([digits, negative]) => (negative ? negated(digits) : digits))

const line: fc.Arbitrary<PriceLine> = fc.record(
  {
    kind: fc.constantFrom<PriceLine['kind']>('labour', 'part', 'outside', 'fee'),
    quantity: signed(decimal(100_000, 4)),
    unit: decimal(1_000_000_000, 6),
    per: decimal(1000, 1).filter(text => Number(text) > 0),
    allowance: signed(decimal(100_000, 3)),
    charge: signed(decimal(100_000, 3)),
    taxes,
  },
  { requiredKeys: ['kind', 'quantity', 'unit', 'taxes'] },
)

const amount = fc.record({ amount: decimal(1_000_000, 0), taxes })

const document: fc.Arbitrary<PriceInput> = fc
  .record({
    currency: fc.constantFrom('JPY', 'EUR', 'BHD', 'CLF'),
    tax: rules,
    lines: fc.array(line, { maxLength: 12 }),
    allowances: fc.array(amount, { maxLength: 3 }),
    charges: fc.array(amount, { maxLength: 3 }),
  })
  // Some come to more than 2^53 − 1 minor units: that is a problem and not what is asked here.
  .filter(input => priced(input).ok && priced({ ...input, tax: { ...input.tax, inclusive: false } }).ok)

function negated(text: string): string {
  if (Number(text) === 0) return text
  return text.startsWith('-') ? text.slice(1) : `-${text}`
}

const creditLine = (given: PriceLine): PriceLine => ({
  ...given,
  quantity: negated(given.quantity),
  ...(given.allowance === undefined ? {} : { allowance: negated(given.allowance) }),
  ...(given.charge === undefined ? {} : { charge: negated(given.charge) }),
})

const credit = (input: PriceInput): PriceInput => ({
  ...input,
  lines: input.lines.map(creditLine),
  allowances: input.allowances?.map(one => ({ ...one, amount: negated(one.amount) })),
  charges: input.charges?.map(one => ({ ...one, amount: negated(one.amount) })),
})

const mirrored = (value: unknown): unknown => {
  if (typeof value === 'number') return value === 0 ? 0 : -value
  if (Array.isArray(value)) return value.map(mirrored)
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, mirrored(inner)]))
  return value
}

test('a credit note mirrors its invoice to the minor unit, in every basis and mode, with and without tax in the price', () => {
  fc.assert(
    fc.property(document, input => {
      expect(must(priced(credit(input)))).toEqual(mirrored(must(priced(input))))
    }),
  )
})

test('net + tax = gross, for the document and, where prices include tax, for what was typed', () => {
  fc.assert(
    fc.property(document, input => {
      const result = must(priced(input))
      expect(result.taxExclusive + result.tax).toBe(result.taxInclusive)
      const typed = must(priced({ ...input, tax: { ...input.tax, inclusive: false } }))
      if (input.tax.inclusive) expect(result.taxInclusive).toBe(typed.taxExclusive)
    }),
  )
})

test('EN 16931 BR-CO-10 to -16: the totals add up from the lines', () => {
  fc.assert(
    fc.property(document, input => {
      const { lines, taxes: groups, ...result } = must(priced(input))
      expect(lines.reduce((sum, { net }) => sum + net, 0)).toBe(result.sum)
      expect(result.sum - result.allowances + result.charges).toBe(result.taxExclusive)
      expect(groups.reduce((sum, { tax }) => sum + tax, 0)).toBe(result.tax)
      expect(result.taxInclusive - result.paid + result.rounding).toBe(result.due)
    }),
  )
})

test('where one tax is on a line, each group’s taxable and tax add up to what was typed', () => {
  const oneTax = document.map(input => ({
    ...input,
    tax: { ...input.tax, inclusive: true },
    allowances: [],
    charges: [],
    lines: input.lines.map(one => ({ ...one, taxes: [{ code: 'S', rate: '20' }] })),
  }))
  fc.assert(
    fc.property(oneTax, input => {
      const result = must(priced(input))
      for (const group of result.taxes) expect(group.taxable + group.tax).toBe(result.taxInclusive)
    }),
  )
})

const byCode = (groups: Priced['taxes']) => groups.map(group => JSON.stringify(group)).sort()

test('the totals do not depend on the order of the lines', () => {
  fc.assert(
    fc.property(document, fc.infiniteStream(fc.nat()), (input, keys) => {
      const shuffled = input.lines
        .map(one => ({ one, key: keys.next().value ?? 0 }))
        .sort((a, b) => a.key - b.key)
        .map(({ one }) => one)
      const [ordered, other] = [must(priced(input)), must(priced({ ...input, lines: shuffled }))]
      const { lines: _lines, taxes: _taxes, sum: _sum, allowances: _a, charges: _c, ...totals } = ordered
      expect(other).toMatchObject(totals)
      // With tax in the price an odd minor unit may fall on another line; without, nothing moves at all.
      if (!input.tax.inclusive) {
        expect(other.sum).toBe(ordered.sum)
        expect(byCode(other.taxes)).toEqual(byCode(ordered.taxes))
      }
    }),
  )
})

test('line and tax agree with an independent decimal library', () => {
  const halfUp = (value: Decimal) => value.toDecimalPlaces(2, Decimal.ROUND_HALF_UP)
  const simple = fc.tuple(signed(decimal(10_000, 4)), decimal(1_000_000_000, 6), rate)
  fc.assert(
    fc.property(simple, ([quantity, unit, percent]) => {
      const tax: TaxRules = { basis: 'group', mode: 'half-up', inclusive: false }
      const lines: PriceLine[] = [{ kind: 'part', quantity, unit, taxes: [{ code: 'S', rate: percent }] }]
      const result = must(priced({ currency: 'EUR', tax, lines }))
      const net = halfUp(new Exact(quantity).times(unit))
      expect(result.taxExclusive).toBe(net.times(100).toNumber() || 0)
      expect(result.tax).toBe(halfUp(net.times(percent).div(100)).times(100).toNumber() || 0)
    }),
  )
})

const plain: PriceInput = {
  currency: 'USD',
  tax: { basis: 'group', mode: 'half-up', inclusive: false },
  lines: [{ kind: 'part', quantity: '1', unit: '1', taxes: [] }],
}
const withLine = (more: Partial<PriceLine>): PriceInput => ({
  ...plain,
  lines: [{ ...(plain.lines[0] as PriceLine), ...more }],
})

test('1.005 is rounded by its digits, not by a float of them', () => {
  expect(must(priced(withLine({ unit: '1.005' }))).sum).toBe(101)
})

test('2^53 − 1 minor units are priced exactly and one more is a problem', () => {
  expect(must(priced(withLine({ unit: '90071992547409.91' }))).due).toBe(Number.MAX_SAFE_INTEGER)
  expect(refusals(priced(withLine({ unit: '90071992547409.92' })))).toContain('money.tooLarge lines[0]')
  const two = { ...plain, lines: [...withLine({ unit: '90071992547409.91' }).lines, ...plain.lines] }
  expect(refusals(priced(two))).toEqual(['money.tooLarge lines'])
})

test('equal code and rate form one group however the rate is written', () => {
  const lines = ['20', '20.0', '020'].map(rate => ({
    ...(plain.lines[0] as PriceLine),
    taxes: [{ code: 'S', rate }],
  }))
  expect(must(priced({ ...plain, lines })).taxes).toEqual([{ code: 'S', rate: '20', taxable: 300, tax: 60 }])
})

test('one code at two rates is two groups, and one tax of their sum when aggregated', () => {
  const input = withLine({
    unit: '1.50',
    taxes: [
      { code: 'T', rate: '4.3' },
      { code: 'T', rate: '2.3' },
    ],
  })
  const of = (aggregate: boolean) => must(priced({ ...input, tax: { ...input.tax, aggregate } })).taxes
  expect(of(false).map(({ code, rate, tax }) => [code, rate, tax])).toEqual([
    ['T', '4.3', 6],
    ['T', '2.3', 3],
  ])
  expect(of(true).map(({ code, rate, tax }) => [code, rate, tax])).toEqual([['T', '6.6', 10]])
})

test('an empty document is worth nothing', () => {
  expect(must(priced({ ...plain, lines: [] })).due).toBe(0)
})

test('every problem of a document is named at once, each with its field', () => {
  const input: PriceInput = {
    currency: 'EUX',
    tax: plain.tax,
    lines: [
      { kind: 'part', quantity: '1e3', unit: '-1', per: '0', taxes: [{ code: '', rate: '-5' }] },
      {
        kind: 'part',
        quantity: 'NaN',
        unit: '1,000',
        unitDiscount: 'Infinity',
        taxes: [
          { code: 'S', rate: '5' },
          { code: 'S', rate: '5.0' },
        ],
      },
      { kind: 'part', quantity: '1', unit: '1', unitDiscount: '1.01', taxes: [] },
    ],
    charges: [{ amount: '1.001', taxes: [] }],
    paid: '',
  }
  expect(refusals(priced(input))).toEqual(
    [
      'money.unknownCurrency currency',
      'number.notADecimal lines[0].quantity',
      'price.negativeUnit lines[0].unit',
      'number.notPositive lines[0].per',
      'price.taxCode lines[0].taxes[0].code',
      'number.negative lines[0].taxes[0].rate',
      'number.notADecimal lines[1].quantity',
      'money.notADecimal lines[1].unit',
      'money.notADecimal lines[1].unitDiscount',
      'price.taxTwice lines[1].taxes[1]',
      'price.discountOverUnit lines[2].unitDiscount',
      'money.tooPrecise charges[0].amount',
      'money.notADecimal paid',
    ].sort(),
  )
})

test('more taxes on a line than any place levies are a problem, not a wait', () => {
  const many = Array.from({ length: 21 }, (_, i) => ({ code: `T${i}`, rate: '1' }))
  expect(refusals(priced(withLine({ taxes: many })))).toEqual(['price.tooManyTaxes lines[0].taxes'])
})

test('twenty taxes on a line are reckoned', () => {
  const many = Array.from({ length: 20 }, (_, i) => ({ code: `T${i}`, rate: '1' }))
  expect(must(priced(withLine({ unit: '100', taxes: many }))).tax).toBe(2000)
})

test('one tax twice on a line is named by its code', () => {
  const twice = priced(withLine({ taxes: ['5', '5.0'].map(rate => ({ code: 'S', rate })) }))
  expect(twice).toMatchObject({ problems: [{ code: 'price.taxTwice', values: { tax: 'S' } }] })
})

test('a kind of line, a basis or a rounding that does not exist is a problem', () => {
  const none = 'none' as never
  expect(refusals(priced(withLine({ kind: none })))).toEqual(['price.kind lines[0].kind'])
  expect(refusals(priced({ ...plain, tax: { ...plain.tax, basis: none, mode: none } }))).toEqual([
    'price.taxBasis tax.basis',
    'price.taxMode tax.mode',
  ])
})

test('what was paid is taken off what is due, and what cash is rounded by is added', () => {
  const { due, paid, rounding } = must(
    priced({ ...withLine({ unit: '10.02' }), paid: '4', rounding: '-0.02' }),
  )
  expect([paid, rounding, due]).toEqual([400, -2, 600])
  expect(refusals(priced({ ...plain, paid: '1.001', rounding: '0.001' }))).toEqual([
    'money.tooPrecise paid',
    'money.tooPrecise rounding',
  ])
})

test('amounts have as many places as the currency; where it is unknown, two', () => {
  const paid = (currency: string, paid: string) => refusals(priced({ ...plain, currency, paid }))
  expect([paid('JPY', '1'), paid('JPY', '1.5'), paid('BHD', '1.001')]).toEqual([
    [],
    ['money.tooPrecise paid'],
    [],
  ])
  expect(paid('EUX', '1.01')).toEqual(['money.unknownCurrency currency'])
})

test('allowances, charges and taxes that come to too much are problems of what they stand in', () => {
  const half = { amount: '50000000000000', taxes: [] }
  const wrong = { amount: '1.001', taxes: [{ code: '', rate: '5' }] }
  expect(refusals(priced({ ...plain, allowances: [half, half] }))).toEqual([
    'money.tooLarge allowances',
    'money.tooLarge lines',
  ])
  expect(refusals(priced({ ...plain, charges: [half, half] }))).toEqual([
    'money.tooLarge charges',
    'money.tooLarge lines',
  ])
  expect(refusals(priced({ ...plain, allowances: [wrong] }))).toEqual([
    'money.tooPrecise allowances[0].amount',
    'price.taxCode allowances[0].taxes[0].code',
  ])
  const taxed = [{ code: 'S', rate: '20' }]
  const { lines } = withLine({ unit: half.amount, taxes: taxed })
  expect(refusals(priced({ ...plain, lines: [...lines, ...lines] }))).toEqual(['money.tooLarge lines'])
  expect(refusals(priced(withLine({ unit: half.amount, taxes: [{ code: 'S', rate: '200' }] })))).toEqual([
    'money.tooLarge lines',
  ])
})

test('a tax in the price is taken out by its part of all rates, however many places each has', () => {
  // 100.00 with 5 % and 9.975 % is 114.975; of 114.98 the parts are 5.0002 and 9.9756.
  const { lines, taxes } = must(
    priced({
      ...withLine({
        unit: '114.98',
        taxes: [
          { code: 'GST', rate: '5' },
          { code: 'QST', rate: '9.975' },
        ],
      }),
      tax: { basis: 'line', mode: 'half-up', inclusive: true },
    }),
  )
  expect([lines[0]?.net, ...taxes.map(({ tax }) => tax)]).toEqual([10_000, 500, 998])
})

describe('what takes back a part of another document', () => {
  const credit = (lines: readonly string[], more: Partial<PriceInput> = {}, whole = 10_000, before = 0) => ({
    ...plain,
    lines: lines.map(unit => ({
      ...(plain.lines[0] as PriceLine),
      quantity: '-1',
      unit,
      taxes: [{ code: 'S', rate: '20' }],
    })),
    partOf: [
      {
        code: 'S',
        rate: '20',
        whole: { amount: minor(whole), tax: minor(whole / 5 + 1) },
        before: { amount: minor(before), tax: minor(Math.floor(before / 5)) },
      },
    ],
    ...more,
  })

  it('takes back the like share of the tax, and with the last of it all that is left', () => {
    // Of 100.00 with 20.01 tax: 33.00 bear 6.6033; the rest after 67.00 and 13.40 bears 6.61.
    expect(must(priced(credit(['33']))).tax).toBe(-660)
    expect(must(priced(credit(['33'], {}, 10_000, 6700))).tax).toBe(-661)
  })

  it('takes back nothing of a group that came to nothing, and is taxed as it stands', () => {
    expect(must(priced(credit(['33'], {}, 0))).tax).toBe(-660)
  })

  it('puts the cent that is still owing on the first line where the lines come to nothing together', () => {
    const input = credit(['10', '10'], { tax: { ...plain.tax, inclusive: true } }, 10_000, 3333)
    const [first, second] = input.lines
    const lines = [first as PriceLine, { ...(second as PriceLine), quantity: '1' }]
    // 33.33 of it bear 6.67, of which 6.66 were taken back.
    const result = must(priced({ ...input, lines }))
    expect(result.tax).toBe(-1)
    expect(result.lines.map(({ net }) => net)).toEqual([-999, 1000])
  })
})
