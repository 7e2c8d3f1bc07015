import { Decimal } from 'decimal.js'
import { XMLParser, XMLValidator } from 'fast-xml-parser'

/*
 * The calculation rules of EN 16931-1 (CEN validation artefacts 1.3.16; Peppol BIS Billing 3 calculation guide), checked
 * exactly on the UBL 2.1 text: read back by a parser that knows nothing of the program, added up with decimal.js.
 */

const Exact = Decimal.clone({ precision: 60, rounding: Decimal.ROUND_HALF_UP })

// biome-ignore lint/suspicious/noExplicitAny: a parsed tree is walked by name
type Tree = any

const parser = new XMLParser({
  ignoreAttributes: false,
  attributeNamePrefix: '@',
  parseTagValue: false,
  parseAttributeValue: false,
  trimValues: false,
  // So that a character reference, as a lone carriage return is written, is read back as its character.
  htmlEntities: true,
  alwaysCreateTextNode: true,
  isArray: (_name, _path, _leaf, isAttribute) => !isAttribute,
})

/** The document's root, every element a list. */
export function parsedUbl(xml: string): { name: string; root: Tree } {
  const valid = XMLValidator.validate(xml)
  if (valid !== true) throw new Error(valid.err.msg)
  const tree = parser.parse(xml)
  const name = 'Invoice' in tree ? 'Invoice' : 'CreditNote'
  return { name, root: tree[name][0] }
}

/** The text at a path such as `cac:TaxTotal/cbc:TaxAmount`; nothing where there is none. */
export function textAt(node: Tree, path: string): string | undefined {
  let at: Tree = node
  for (const step of path.split('/')) at = at?.[step]?.[0]
  return at?.['#text']
}

const all = (node: Tree, name: string): Tree[] => node?.[name] ?? []
const amount = (node: Tree, path: string): Decimal => new Exact(textAt(node, path) ?? '0')
const sum = (amounts: readonly Decimal[]): Decimal =>
  amounts.reduce((total, one) => total.plus(one), new Exact(0))
const isCharge = (node: Tree) => textAt(node, 'cbc:ChargeIndicator') === 'true'

/** In the order of the UBL 2.1 schemas (OASIS, UBL-Invoice-2.1.xsd, UBL-CreditNote-2.1.xsd; from memory). */
const order = [
  'cbc:CustomizationID',
  'cbc:ID',
  'cbc:IssueDate',
  'cbc:DueDate',
  'cbc:InvoiceTypeCode',
  'cbc:CreditNoteTypeCode',
  'cbc:Note',
  'cbc:DocumentCurrencyCode',
  'cac:BillingReference',
  'cac:AccountingSupplierParty',
  'cac:AccountingCustomerParty',
  'cac:PaymentTerms',
  'cac:AllowanceCharge',
  'cac:TaxTotal',
  'cac:LegalMonetaryTotal',
  'cac:InvoiceLine',
  'cac:CreditNoteLine',
]

const keyOf = (category: Tree) => `${textAt(category, 'cbc:ID')} ${textAt(category, 'cbc:Percent')}`

/** Every rule the text breaks, by its name in the standard; none for a right one. */
export function brokenRules(xml: string): string[] {
  const broken: string[] = []
  const rule = (name: string, holds: boolean) => {
    if (!holds) broken.push(name)
  }
  const equal = (name: string, a: Decimal, b: Decimal) => rule(`${name}: ${a} ≠ ${b}`, a.equals(b))

  const { name, root } = parsedUbl(xml)
  const lineName = name === 'Invoice' ? 'cac:InvoiceLine' : 'cac:CreditNoteLine'
  const quantityName = name === 'Invoice' ? 'cbc:InvoicedQuantity' : 'cbc:CreditedQuantity'
  const lines = all(root, lineName)
  const adjustments = all(root, 'cac:AllowanceCharge')
  const total = root['cac:LegalMonetaryTotal'][0]
  const totalOf = (element: string) => amount(total, `cbc:${element}`)

  const places = Object.keys(root)
    .filter(key => key.includes(':') && !key.startsWith('@'))
    .map(key => order.indexOf(key))
  rule(
    'UBL 2.1 order',
    places.every((place, i) => place >= 0 && place > (places[i - 1] ?? -1)),
  )
  rule('BR-01', textAt(root, 'cbc:CustomizationID') === 'urn:cen.eu:en16931:2017')
  for (const [code, path] of Object.entries({
    'BR-02': 'cbc:ID',
    'BR-03': 'cbc:IssueDate',
    'BR-05': 'cbc:DocumentCurrencyCode',
    'BR-06': 'cac:AccountingSupplierParty/cac:Party/cac:PartyLegalEntity/cbc:RegistrationName',
    'BR-07': 'cac:AccountingCustomerParty/cac:Party/cac:PartyLegalEntity/cbc:RegistrationName',
    'BR-09': 'cac:AccountingSupplierParty/cac:Party/cac:PostalAddress/cac:Country/cbc:IdentificationCode',
    'BR-11': 'cac:AccountingCustomerParty/cac:Party/cac:PostalAddress/cac:Country/cbc:IdentificationCode',
  }))
    rule(code, Boolean(textAt(root, path)))
  rule('BR-16', lines.length > 0)

  // The line: round2(price ÷ base quantity × quantity) + charges − allowances.
  for (const line of lines) {
    const per = new Exact(textAt(line, 'cac:Price/cbc:BaseQuantity') ?? '1')
    const price = amount(line, 'cac:Price/cbc:PriceAmount')
    const quantity = amount(line, quantityName)
    const own = all(line, 'cac:AllowanceCharge').map(one =>
      isCharge(one) ? amount(one, 'cbc:Amount') : amount(one, 'cbc:Amount').negated(),
    )
    const gross = price.times(quantity).div(per).toDecimalPlaces(2)
    equal('line net', amount(line, 'cbc:LineExtensionAmount'), gross.plus(sum(own)))
    rule('BR-25', Boolean(textAt(line, 'cac:Item/cbc:Name')))
    rule('BR-27', !price.isNegative())
    rule('BT-149', per.greaterThan(0))
    rule('BR-CO-04', Boolean(textAt(line, 'cac:Item/cac:ClassifiedTaxCategory/cbc:ID')))
  }

  const allowances = adjustments.filter(one => !isCharge(one))
  const charges = adjustments.filter(isCharge)
  for (const one of adjustments) {
    rule('BR-33, BR-38', Boolean(textAt(one, 'cbc:AllowanceChargeReason')))
    rule('BR-32, BR-37', Boolean(textAt(one, 'cac:TaxCategory/cbc:ID')))
  }
  equal(
    'BR-CO-10',
    totalOf('LineExtensionAmount'),
    sum(lines.map(line => amount(line, 'cbc:LineExtensionAmount'))),
  )
  equal('BR-CO-11', totalOf('AllowanceTotalAmount'), sum(allowances.map(one => amount(one, 'cbc:Amount'))))
  equal('BR-CO-12', totalOf('ChargeTotalAmount'), sum(charges.map(one => amount(one, 'cbc:Amount'))))
  equal(
    'BR-CO-13',
    totalOf('TaxExclusiveAmount'),
    totalOf('LineExtensionAmount').minus(totalOf('AllowanceTotalAmount')).plus(totalOf('ChargeTotalAmount')),
  )
  const groups = all(root['cac:TaxTotal'][0], 'cac:TaxSubtotal')
  const tax = amount(root, 'cac:TaxTotal/cbc:TaxAmount')
  equal('BR-CO-14', tax, sum(groups.map(group => amount(group, 'cbc:TaxAmount'))))
  equal('BR-CO-15', totalOf('TaxInclusiveAmount'), totalOf('TaxExclusiveAmount').plus(tax))
  equal(
    'BR-CO-16',
    totalOf('PayableAmount'),
    totalOf('TaxInclusiveAmount').minus(totalOf('PrepaidAmount')).plus(totalOf('PayableRoundingAmount')),
  )
  rule('BR-CO-18', groups.length > 0)
  const keys = groups.map(group => keyOf(group['cac:TaxCategory'][0]))
  rule('one breakdown for each category and rate', new Set(keys).size === keys.length)

  for (const group of groups) {
    const own = group['cac:TaxCategory'][0]
    const [code, rate] = [textAt(own, 'cbc:ID'), amount(own, 'cbc:Percent')]
    const taxable = amount(group, 'cbc:TaxableAmount')
    // BR-CO-17, BR-S-09: round2(taxable × rate).
    equal('BR-CO-17', amount(group, 'cbc:TaxAmount'), taxable.times(rate).div(100).toDecimalPlaces(2))
    const inGroup = (category: Tree) => keyOf(category) === keyOf(own)
    const nets = lines
      .filter(line => inGroup(line['cac:Item'][0]['cac:ClassifiedTaxCategory'][0]))
      .map(line => amount(line, 'cbc:LineExtensionAmount'))
    const adjusted = adjustments
      .filter(one => inGroup(one['cac:TaxCategory'][0]))
      .map(one => (isCharge(one) ? amount(one, 'cbc:Amount') : amount(one, 'cbc:Amount').negated()))
    equal('BR-S-08', taxable, sum([...nets, ...adjusted]))
    rule('BR-S-05', code !== 'S' || rate.greaterThan(0))
    rule('BR-Z-05, BR-E-05', code === 'S' || rate.isZero())
    rule('BR-E-10', (code === 'E') === Boolean(textAt(own, 'cbc:TaxExemptionReason')))
  }
  const usedKeys = [
    ...lines.map(line => keyOf(line['cac:Item'][0]['cac:ClassifiedTaxCategory'][0])),
    ...adjustments.map(one => keyOf(one['cac:TaxCategory'][0])),
  ]
  rule(
    'BR-S-01, BR-Z-01, BR-E-01',
    usedKeys.every(key => keys.includes(key)),
  )

  const seller = root['cac:AccountingSupplierParty'][0]['cac:Party'][0]
  const registration = textAt(seller, 'cac:PartyTaxScheme/cbc:CompanyID') ?? ''
  rule('BR-S-02, BR-Z-02, BR-E-02', registration !== '')
  const isVat = textAt(seller, 'cac:PartyTaxScheme/cac:TaxScheme/cbc:ID') === 'VAT'
  rule('BR-CO-09', !isVat || /^[A-Z]{2}/.test(registration))
  rule('BR-CO-26', isVat || Boolean(textAt(seller, 'cac:PartyIdentification/cbc:ID')))
  const due = totalOf('PayableAmount')
  rule(
    'BR-CO-25',
    name === 'CreditNote' ||
      !due.greaterThan(0) ||
      Boolean(textAt(root, 'cbc:DueDate') ?? textAt(root, 'cac:PaymentTerms/cbc:Note')),
  )
  // BR-DEC: amounts have at most two decimals; only the price of an item may have more.
  const decimals = [...xml.matchAll(/<cbc:(\w*Amount) [^>]*>-?\d+(?:\.(\d+))?</g)]
  rule(
    'BR-DEC',
    decimals.every(([, element, fraction]) => element === 'PriceAmount' || (fraction ?? '').length <= 2),
  )
  return broken
}
