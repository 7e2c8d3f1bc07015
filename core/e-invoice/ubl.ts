import { type Minor, minorText } from '../money/minor.ts'
import type { Adjustment, Category, EInvoice, InvoiceLine, Party, Seller, TaxBreakdown } from './model.ts'
import { type Element, element, xmlText } from './xml.ts'

/*
 * The syntax binding of EN 16931 to UBL 2.1 (CEN/TS 16931-3-2). Elements stand in the order of the UBL 2.1 schemas.
 */

const namespaces = {
  'xmlns:cac': 'urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2',
  'xmlns:cbc': 'urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2',
}

/** What differs between the two documents; type codes of UNCL 1001. */
const roots = {
  invoice: {
    name: 'Invoice',
    type: 'InvoiceTypeCode',
    code: '380',
    line: 'InvoiceLine',
    quantity: 'InvoicedQuantity',
  },
  'credit-note': {
    name: 'CreditNote',
    type: 'CreditNoteTypeCode',
    code: '381',
    line: 'CreditNoteLine',
    quantity: 'CreditedQuantity',
  },
} as const

/** Words that stand in an e-invoice. */
export interface UblWords {
  /** When it is to be paid, where no day is set (BT-20). */
  readonly terms: string
  /** Why something is without tax (BT-120). */
  readonly exempt: string
}

const cbc = (name: string, text: string, attributes: Record<string, string> = {}) =>
  element(`cbc:${name}`, text, attributes)
const cac = (name: string, inside: readonly (Element | readonly Element[] | undefined)[]) =>
  element(`cac:${name}`, inside)
const when = (text: string | undefined, make: (text: string) => Element): Element | undefined =>
  text ? make(text) : undefined

const scheme = (id: string) => cac('TaxScheme', [cbc('ID', id)])

const category = (name: string, { code, rate }: Category, reason?: string) =>
  cac(name, [
    cbc('ID', code),
    cbc('Percent', rate),
    when(reason, text => cbc('TaxExemptionReason', text)),
    scheme('VAT'),
  ])

function address({ addressLines, country }: Party): Element {
  const [street, further, ...rest] = addressLines
  return cac('PostalAddress', [
    when(street, text => cbc('StreetName', text)),
    when(further, text => cbc('AdditionalStreetName', text)),
    when(rest.join(', '), text => cac('AddressLine', [cbc('Line', text)])),
    cac('Country', [cbc('IdentificationCode', country)]),
  ])
}

function contact({ phone, email }: Party): Element | undefined {
  if (!phone && !email) return undefined
  return cac('Contact', [
    when(phone, text => cbc('Telephone', text)),
    when(email, text => cbc('ElectronicMail', text)),
  ])
}

const legalName = ({ name }: Party) => cac('PartyLegalEntity', [cbc('RegistrationName', name)])

/** The shop. A registration that is no VAT identifier also identifies it to the buyer (BT-29, for BR-CO-26). */
const supplier = (seller: Seller): Element => {
  const { scheme: kind, id } = seller.registration
  return cac('AccountingSupplierParty', [
    cac('Party', [
      kind === 'VAT' ? undefined : cac('PartyIdentification', [cbc('ID', id)]),
      address(seller),
      cac('PartyTaxScheme', [cbc('CompanyID', id), scheme(kind)]),
      legalName(seller),
      contact(seller),
    ]),
  ])
}

const customer = (buyer: Party): Element =>
  cac('AccountingCustomerParty', [cac('Party', [address(buyer), legalName(buyer)])])

type Money = (name: string, amount: Minor) => Element

const adjustmentOf = (money: Money, { charge, amount, reason }: Adjustment, own?: Category): Element =>
  cac('AllowanceCharge', [
    cbc('ChargeIndicator', String(charge)),
    cbc('AllowanceChargeReason', reason),
    money('Amount', amount),
    own && category('TaxCategory', own),
  ])

const subtotal = (money: Money, words: UblWords, group: TaxBreakdown): Element =>
  cac('TaxSubtotal', [
    money('TaxableAmount', group.taxable),
    money('TaxAmount', group.tax),
    category('TaxCategory', group, group.code === 'E' ? words.exempt : undefined),
  ])

const monetaryTotal = (money: Money, { totals, adjustments }: EInvoice): Element => {
  const has = (charge: boolean) => adjustments.some(one => one.charge === charge)
  return cac('LegalMonetaryTotal', [
    money('LineExtensionAmount', totals.lines),
    money('TaxExclusiveAmount', totals.taxExclusive),
    money('TaxInclusiveAmount', totals.taxInclusive),
    has(false) ? money('AllowanceTotalAmount', totals.allowances) : undefined,
    has(true) ? money('ChargeTotalAmount', totals.charges) : undefined,
    totals.paid === 0 ? undefined : money('PrepaidAmount', totals.paid),
    totals.rounding === 0 ? undefined : money('PayableRoundingAmount', totals.rounding),
    money('PayableAmount', totals.due),
  ])
}

function lineOf(invoice: EInvoice, money: Money, line: InvoiceLine, index: number): Element {
  const root = roots[invoice.kind]
  const unit = { unitCode: line.unitCode }
  return cac(root.line, [
    cbc('ID', String(index + 1)),
    cbc(root.quantity, line.quantity, unit),
    money('LineExtensionAmount', line.net),
    line.adjustments.map(one => adjustmentOf(money, one)),
    cac('Item', [cbc('Name', line.name), category('ClassifiedTaxCategory', line.category)]),
    cac('Price', [
      cbc('PriceAmount', line.price, { currencyID: invoice.currency }),
      line.per === '1' ? undefined : cbc('BaseQuantity', line.per, unit),
    ]),
  ])
}

const corrected = ({ number, issuedOn }: NonNullable<EInvoice['corrects']>): Element =>
  cac('BillingReference', [cac('InvoiceDocumentReference', [cbc('ID', number), cbc('IssueDate', issuedOn)])])

/** The e-invoice as UBL 2.1 XML, the same text each time. */
export function ublXml(invoice: EInvoice, words: UblWords): string {
  const { name, type, code } = roots[invoice.kind]
  const money: Money = (element, amount) =>
    cbc(element, minorText(amount, invoice.currency), { currencyID: invoice.currency })
  const root = element(
    name,
    [
      cbc('CustomizationID', 'urn:cen.eu:en16931:2017'),
      cbc('ID', invoice.number),
      cbc('IssueDate', invoice.issuedOn),
      when(invoice.dueOn, day => cbc('DueDate', day)),
      cbc(type, code),
      when(invoice.note, note => cbc('Note', note)),
      cbc('DocumentCurrencyCode', invoice.currency),
      invoice.corrects && corrected(invoice.corrects),
      supplier(invoice.seller),
      customer(invoice.buyer),
      invoice.kind === 'invoice' && !invoice.dueOn
        ? cac('PaymentTerms', [cbc('Note', words.terms)])
        : undefined,
      invoice.adjustments.map(one => adjustmentOf(money, one, one.category)),
      cac('TaxTotal', [
        money('TaxAmount', invoice.totals.tax),
        invoice.taxes.map(group => subtotal(money, words, group)),
      ]),
      monetaryTotal(money, invoice),
      invoice.lines.map((line, index) => lineOf(invoice, money, line, index)),
    ],
    { xmlns: `urn:oasis:names:specification:ubl:schema:xsd:${name}-2`, ...namespaces },
  )
  return xmlText(root)
}
