import { gather, whenGood } from '../checked.ts'
import { currencyDigits, type Minor, minor } from '../money/minor.ts'
import type { CreditNoteContents, InvoiceContents, PaperHead } from '../papers/contents.ts'
import { priceInputOf } from '../papers/price-input.ts'
import { type PricedItem, pricedItems } from '../pricing/items.ts'
import { bad, type Checked, good, problem } from '../problems.ts'
import { adjustment, invoiceLine, type LineRules } from './lines.ts'
import type { Category, EInvoice, Party, Seller, Totals } from './model.ts'
import { breakdown, categories } from './taxes.ts'

/** A paper that has an e-invoice. */
export type Billed = InvoiceContents | CreditNoteContents

/** Names for allowances and charges that have none of their own (BR-33, BR-38, BR-42, BR-44). */
export interface EInvoiceWords {
  readonly adjustment: string
}

const countryCode = (text: string | undefined): string | undefined => {
  const code = text?.toUpperCase()
  return code && /^[A-Z]{2}$/.test(code) ? code : undefined
}

/** Greece's VAT numbers begin with EL, Northern Ireland's may begin with XI (BR-CO-09; XI from memory). */
const otherPrefixes: Readonly<Record<string, string>> = { GR: 'EL', GB: 'XI' }

function seller({ shop }: PaperHead): Checked<Seller> {
  const country = countryCode(shop.country)
  const id = shop.taxNumber?.replace(/[\s.-]/g, '').toUpperCase() ?? ''
  if (!country) return bad([problem('eInvoice.country', 'shop.country')])
  if (id === '') return bad([problem('eInvoice.taxNumber', 'shop.taxNumber')])
  const isVat = id.startsWith(country) || id.startsWith(otherPrefixes[country] ?? country)
  const { name, addressLines, phone, email } = shop
  return good({
    name,
    addressLines,
    country,
    ...(phone ? { phone } : {}),
    ...(email ? { email } : {}),
    registration: { scheme: isVat ? 'VAT' : 'TAX', id },
  })
}

/** The owner; where no country is known, the shop's. */
const buyer = ({ owner, shop }: PaperHead): Party => ({
  name: owner.name,
  addressLines: owner.addressLines,
  country: countryCode(owner.country) ?? countryCode(shop.country) ?? '',
})

const sum = (amounts: readonly number[]): Minor => minor(amounts.reduce((all, amount) => all + amount, 0))

/** The totals by the standard's own formulas (BR-CO-10 to -16). */
function totals(
  { lines, adjustments, taxes }: Pick<EInvoice, 'lines' | 'adjustments' | 'taxes'>,
  paid: Minor,
  rounding: Minor,
): Totals {
  const of = (charge: boolean) =>
    sum(adjustments.filter(one => one.charge === charge).map(({ amount }) => amount))
  const [nets, allowances, charges] = [sum(lines.map(({ net }) => net)), of(false), of(true)]
  const taxExclusive = minor(nets - allowances + charges)
  const tax = sum(taxes.map(group => group.tax))
  const taxInclusive = minor(taxExclusive + tax)
  const due = minor(taxInclusive - paid + rounding)
  return { lines: nets, allowances, charges, taxExclusive, tax, taxInclusive, paid, rounding, due }
}

function body(paper: Billed, items: readonly PricedItem[], own: readonly Category[], rules: LineRules) {
  const { sign, reason } = rules
  const none: Category = { code: 'E', rate: '0' }
  const net = (index: number) => minor(sign * (items[index]?.net ?? 0))
  const named = [...(paper.allowances ?? []), ...(paper.charges ?? [])]
  return {
    lines: paper.lines.map((line, i) => invoiceLine(line, net(i), own[i] ?? none, rules)),
    adjustments: named.flatMap(({ description }, i) => {
      const index = paper.lines.length + i
      const category = own[index] ?? none
      return adjustment(net(index), description || reason).map(one => ({ ...one, category }))
    }),
  }
}

/** The reason a credit note gives, or what stands below an invoice. */
const noteOf = (paper: Billed): string | undefined => (paper.kind === 'invoice' ? paper.notes : paper.reason)

/**
 * The frozen paper in the terms of EN 16931, saying the very sums it says. Problems: `eInvoice.country`,
 * `eInvoice.taxNumber` (the shop has none), `eInvoice.currency` (of more than two places), `eInvoice.severalTaxes`,
 * `eInvoice.taxRounding`.
 */
export function eInvoice(paper: Billed, words: EInvoiceWords): Checked<EInvoice> {
  const sign = paper.kind === 'credit-note' ? -1 : 1
  const parts = gather({
    seller: seller(paper),
    digits: whenGood(currencyDigits(paper.currency), digits =>
      digits > 2
        ? bad([problem('eInvoice.currency', 'currency', { currency: paper.currency })])
        : good(digits),
    ),
    items: pricedItems(priceInputOf(paper)),
  })
  return whenGood(parts, ({ seller, digits, items }) =>
    whenGood(categories(items), own =>
      whenGood(breakdown(items, own, sign), taxes => {
        const { currency, number, issuedOn, kind, priced } = paper
        const rules = {
          currency,
          digits,
          inclusive: paper.tax.inclusive,
          sign,
          reason: words.adjustment,
        } as const
        const lines = body(paper, items, own, rules)
        const note = noteOf(paper)
        return good({
          kind,
          number,
          issuedOn,
          currency,
          ...(note ? { note } : {}),
          ...(paper.kind === 'invoice' && paper.dueOn ? { dueOn: paper.dueOn } : {}),
          ...(paper.kind === 'credit-note' ? { corrects: paper.invoice } : {}),
          seller,
          buyer: buyer(paper),
          ...lines,
          taxes,
          totals: totals({ ...lines, taxes }, minor(sign * priced.paid), minor(sign * priced.rounding)),
        })
      }),
    ),
  )
}
