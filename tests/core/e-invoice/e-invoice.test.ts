import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { type Billed, eInvoice } from '../../../core/e-invoice/e-invoice.ts'
import { ublXml } from '../../../core/e-invoice/ubl.ts'
import { minor } from '../../../core/money/minor.ts'
import type { PaperAdjustment, PaperLine } from '../../../core/papers/contents.ts'
import { priced } from '../../../core/pricing/price.ts'
import type { PriceInput, PriceLine, Tax } from '../../../core/pricing/price-input.ts'
import { en } from '../../../core/words/en/index.ts'
import { must, refusals } from '../must.ts'
import { anyPriceInput } from '../tax/any-document.ts'
import { brokenRules, parsedUbl, textAt } from './checker.ts'

const head = {
  shop: {
    name: 'Thornbury Clock Bench',
    addressLines: ['4 Weir Lane', 'Thornbury'],
    taxNumber: 'GB 000 0000 00',
    country: 'GB',
  },
  locale: 'en-GB',
  timeZone: 'Europe/London',
  language: 'en',
  number: 'I0001',
  issuedOn: '2027-03-01',
  owner: { name: 'Rosamund Pell', addressLines: ['11 Quay Street', 'Thornbury'] },
} as const

const named = (amounts: PriceInput['allowances']): PaperAdjustment[] =>
  (amounts ?? []).map(amount => ({ ...amount, description: 'Adjusted' }))

/** The paper of a document as the shop would freeze it. */
function paper(input: PriceInput): Extract<Billed, { kind: 'invoice' }> {
  const figures = must(priced(input))
  const lines: PaperLine[] = input.lines.map((line, i) => ({
    ...line,
    description: 'Work',
    net: figures.lines[i]?.net ?? minor(0),
    working: [],
  }))
  return {
    ...head,
    kind: 'invoice',
    currency: input.currency,
    tax: input.tax,
    lines,
    allowances: named(input.allowances),
    charges: named(input.charges),
    priced: figures,
    payments: [],
  }
}

/** Its credit note: every quantity and amount mirrored. */
function credited(input: PriceInput): Billed {
  const lines = input.lines.map(line => ({ ...line, quantity: mirrored(line.quantity) }))
  const mirror = { ...input, lines, allowances: input.charges, charges: input.allowances, paid: '0' }
  const { payments: _none, ...invoice } = paper(mirror)
  return {
    ...invoice,
    kind: 'credit-note',
    number: 'C0001',
    invoice: { number: 'I0001', issuedOn: '2027-03-01' },
  }
}

const mirrored = (text: string) => (text.startsWith('-') ? text.slice(1) : `-${text}`)
const xmlOf = (billed: Billed) => ublXml(must(eInvoice(billed, en.eInvoice)), en.eInvoice)

const byGroup = { basis: 'group', mode: 'half-up', inclusive: false } as const
const vat = (rate: string): Tax[] => [{ code: 'S', rate }]
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

const total = (xml: string, name: string) => textAt(parsedUbl(xml).root, `cac:LegalMonetaryTotal/cbc:${name}`)

// Peppol BIS Billing 3, allowance example; EN 16931 calculation rules of the CEN validation artefacts 1.3.16. T1.7.
const allowanceExample: PriceInput = {
  currency: 'EUR',
  tax: byGroup,
  lines: [
    line('10', '450', vat('25'), { unitDiscount: '40', charge: '1', allowance: '101' }),
    line('10', '200', [], { per: '2' }),
    line('10', '100', vat('25'), { charge: '1', allowance: '101' }),
  ],
  charges: [{ amount: '200', taxes: vat('25') }],
  allowances: [{ amount: '200', taxes: vat('25') }],
  paid: '1000',
}

test('the Peppol allowance example comes to its published totals, 7125 with tax and 6125 due', () => {
  const xml = xmlOf(paper(allowanceExample))
  expect(brokenRules(xml)).toEqual([])
  expect(total(xml, 'LineExtensionAmount')).toBe('5900.00')
  expect(total(xml, 'AllowanceTotalAmount')).toBe('200.00')
  expect(total(xml, 'ChargeTotalAmount')).toBe('200.00')
  expect(total(xml, 'TaxExclusiveAmount')).toBe('5900.00')
  expect(total(xml, 'TaxInclusiveAmount')).toBe('7125.00')
  expect(total(xml, 'PrepaidAmount')).toBe('1000.00')
  expect(total(xml, 'PayableAmount')).toBe('6125.00')
  const nets = parsedUbl(xml).root['cac:InvoiceLine'].map((one: unknown) =>
    textAt(one, 'cbc:LineExtensionAmount'),
  )
  expect(nets).toEqual(['4000.00', '1000.00', '900.00'])
  const groups = parsedUbl(xml).root['cac:TaxTotal'][0]['cac:TaxSubtotal'].map((one: unknown) =>
    ['cac:TaxCategory/cbc:ID', 'cbc:TaxableAmount', 'cbc:TaxAmount'].map(path => textAt(one, path)),
  )
  expect(groups).toEqual([
    ['S', '4900.00', '1225.00'],
    ['E', '1000.00', '0.00'],
  ])
})

// CEN EN 16931 example 8, 21 %. T1.9: prices of five places and base quantities of twelve.
test('CEN example 8 comes to 908.91 net, 190.87 tax, 1099.78', () => {
  const per = (unit: string, quantity: string) => line(quantity, unit, vat('21'), { per: '12' })
  const xml = xmlOf(
    paper({
      currency: 'EUR',
      tax: byGroup,
      lines: [
        line('16000', '0.00880', vat('21')),
        line('16000', '0.00101', vat('21')),
        per('15.24', '132'),
        line('58', '1.53', vat('21')),
        per('441', '1'),
        per('678', '1'),
        ...['83.34', '190.31', '64.21', '64.46'].map(unit => line('1', unit, vat('21'))),
      ],
    }),
  )
  expect(brokenRules(xml)).toEqual([])
  expect(total(xml, 'TaxExclusiveAmount')).toBe('908.91')
  expect(textAt(parsedUbl(xml).root, 'cac:TaxTotal/cbc:TaxAmount')).toBe('190.87')
  expect(total(xml, 'TaxInclusiveAmount')).toBe('1099.78')
})

describe('an e-invoice of any document', () => {
  /** Rounded once on the group, as the standard demands; one tax on a line. */
  const standard = anyPriceInput.map(input => ({
    ...input,
    tax: { ...byGroup, aggregate: true, inclusive: input.tax.inclusive },
  }))

  it('obeys every rule of the standard and says the paper’s own totals, or says why there is none', () => {
    let made = 0
    fc.assert(
      fc.property(standard, input => {
        for (const billed of [paper(input), credited(input)]) {
          const answer = eInvoice(billed, en.eInvoice)
          const sign = billed.kind === 'invoice' ? 1 : -1
          if (answer.ok) {
            made += 1
            const xml = ublXml(answer.value, en.eInvoice)
            expect(brokenRules(xml)).toEqual([])
            expect(answer.value.totals.taxInclusive).toBe(minor(sign * billed.priced.taxInclusive))
            expect(answer.value.totals.tax).toBe(minor(sign * billed.priced.tax))
            expect(answer.value.totals.due).toBe(minor(sign * billed.priced.due))
          } else expect(refusals(answer)).toEqual(['eInvoice.taxRounding tax'])
        }
      }),
      { numRuns: 300 },
    )
    expect(made).toBeGreaterThan(300)
  })

  it('is there for every document without tax in its prices whose like rates have like codes', () => {
    fc.assert(
      fc.property(standard, input => {
        const oneCode = (taxes: readonly Tax[]) =>
          taxes.slice(0, 1).map(({ rate }) => ({ code: 'VAT', rate }))
        const plain: PriceInput = {
          ...input,
          tax: byGroup,
          lines: input.lines.map(one => ({ ...one, taxes: oneCode(one.taxes) })),
          allowances: input.allowances?.map(one => ({ ...one, taxes: oneCode(one.taxes) })),
          charges: input.charges?.map(one => ({ ...one, taxes: oneCode(one.taxes) })),
        }
        expect(brokenRules(xmlOf(paper(plain)))).toEqual([])
        expect(brokenRules(xmlOf(credited(plain)))).toEqual([])
      }),
      { numRuns: 200 },
    )
  })

  it('is the same text each time, and any name comes back whole', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), text => {
        const invoice = { ...paper(allowanceExample), owner: { name: `O${text}e`, addressLines: [text] } }
        expect(xmlOf(invoice)).toBe(xmlOf(invoice))
        const path = 'cac:AccountingCustomerParty/cac:Party/cac:PartyLegalEntity/cbc:RegistrationName'
        const writable = text.replace(
          /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu,
          '\u{FFFD}',
        )
        expect(textAt(parsedUbl(xmlOf(invoice)).root, path)).toBe(`O${writable}e`)
      }),
      { examples: [['\r'], ['&#13;'], ['&amp;lt;'], [']]>'], ['\u0000']] },
    )
  })
})

describe('where there can be none, it says why', () => {
  const invoice = paper(allowanceExample)
  const problems = (billed: Billed) => refusals(eInvoice(billed, en.eInvoice))
  const simple = (taxes: Tax[], more: Partial<PriceInput> = {}) =>
    paper({
      currency: 'EUR',
      tax: byGroup,
      lines: [line('1', '0.33', taxes), line('1', '0.33', taxes)],
      ...more,
    })

  it.each([
    [
      'the shop’s country',
      { ...invoice, shop: { ...invoice.shop, country: '' } },
      'eInvoice.country shop.country',
    ],
    [
      'its tax registration',
      { ...invoice, shop: { name: 'X', addressLines: [], country: 'GB' } },
      'eInvoice.taxNumber shop.taxNumber',
    ],
    [
      'two taxes on a line',
      simple([
        { code: 'A', rate: '5' },
        { code: 'B', rate: '7' },
      ]),
      'eInvoice.severalTaxes lines[0].taxes',
    ],
    [
      'tax rounded on each line',
      simple(vat('7'), { tax: { ...byGroup, basis: 'line' } }),
      'eInvoice.taxRounding tax',
    ],
    ['three decimal places', simple([], { currency: 'KWD' }), 'eInvoice.currency currency'],
  ] as const)('%s', (_what, billed, problem) => {
    expect(problems(billed)).toContain(problem)
    const [code] = problem.split(' ')
    expect(en.problems).toHaveProperty([code ?? ''])
  })

  it('a registration that is no VAT identifier is said as another one, and identifies the seller', () => {
    const xml = xmlOf({ ...invoice, shop: { ...invoice.shop, taxNumber: '21/815/08150' } })
    expect(brokenRules(xml)).toEqual([])
    const party = parsedUbl(xml).root['cac:AccountingSupplierParty'][0]
    expect(textAt(party, 'cac:Party/cac:PartyTaxScheme/cac:TaxScheme/cbc:ID')).toBe('TAX')
    expect(textAt(party, 'cac:Party/cac:PartyIdentification/cbc:ID')).toBe('21/815/08150')
  })
})

test('the checker sees a wrong figure in each total', () => {
  const xml = xmlOf(paper(allowanceExample))
  for (const name of [
    'LineExtensionAmount',
    'AllowanceTotalAmount',
    'ChargeTotalAmount',
    'TaxExclusiveAmount',
    'TaxInclusiveAmount',
    'PrepaidAmount',
    'PayableAmount',
    'TaxableAmount',
    'TaxAmount',
    'PriceAmount',
    'BaseQuantity',
  ]) {
    const changed = xml.replace(
      new RegExp(`(<cbc:${name} [^>]*>)(\\d)`),
      (_all, open, digit) => `${open}${(Number(digit) % 9) + 1}`,
    )
    expect(changed, name).not.toBe(xml)
    expect(brokenRules(changed), name).not.toEqual([])
  }
})
