import { gather, gatherList, unless, whenGood } from '../checked.ts'
import { parseNonNegative } from '../decimal/decimal.ts'
import type { MinorDigits } from '../money/currency.ts'
import { roundingModes } from '../money/div-round.ts'
import { currencyDigits, type Minor, minorOf, parseMinorExact } from '../money/minor.ts'
import { bad, type Checked, good, type Problem, problem } from '../problems.ts'
import { isLineKind } from './kinds/index.ts'
import { lineAmount } from './line-amount.ts'
import type { DocumentAmount, PriceInput, PriceLine, Tax, TaxRules } from './price-input.ts'
import { type RatedTax, type TaxableItem, type Taxed, taxed, taxGroup } from './taxed.ts'

export type { DocumentAmount, PriceInput, PriceLine, Tax, TaxPart, TaxRules } from './price-input.ts'

/** A priced document in minor units, by the totals of EN 16931 (BT-106 to BT-115). */
export interface Priced {
  /** What each line comes to without tax. */
  readonly lines: readonly { readonly net: Minor }[]
  readonly sum: Minor
  readonly allowances: Minor
  readonly charges: Minor
  /** sum − allowances + charges (BR-CO-13). */
  readonly taxExclusive: Minor
  readonly taxes: readonly PricedTax[]
  readonly tax: Minor
  readonly taxInclusive: Minor
  readonly paid: Minor
  readonly rounding: Minor
  /** taxInclusive − paid + rounding (BR-CO-16). */
  readonly due: Minor
}

/**
 * One group of equal code and rate; `rate` in percent as a decimal text. Aggregated taxes have their codes joined
 * by `+`.
 */
export interface PricedTax {
  readonly code: string
  readonly rate: string
  readonly taxable: Minor
  readonly tax: Minor
}

/** A document read, its amounts in minor units. */
export interface ParsedDocument {
  readonly lines: readonly TaxableItem[]
  readonly allowances: readonly TaxableItem[]
  readonly charges: readonly TaxableItem[]
  readonly paid: Minor
  readonly rounding: Minor
}

/** The document priced, exact to the minor unit, or every problem in it. */
export const priced = (input: PriceInput): Checked<Priced> =>
  whenGood(parsedDocument(input), document => totals(document, input))

/** The document read, or every problem in it. */
export function parsedDocument(input: PriceInput): Checked<ParsedDocument> {
  const currency = currencyDigits(input.currency)
  // Two digits stand in for an unknown currency's, so that the other problems are named as well.
  const digits = currency.ok ? currency.value : 2
  return gather({
    currency,
    rules: rulesChecked(input.tax),
    lines: gatherList(input.lines.map((line, i) => lineItem(line, digits, `lines[${i}]`))),
    allowances: amountItems(input.allowances ?? [], digits, 'allowances'),
    charges: amountItems(input.charges ?? [], digits, 'charges'),
    paid: parseMinorExact(input.paid ?? '0', digits, 'paid'),
    rounding: parseMinorExact(input.rounding ?? '0', digits, 'rounding'),
  })
}

function lineItem(line: PriceLine, digits: MinorDigits, field: string): Checked<TaxableItem> {
  return gather({
    kind: unless(
      isLineKind(line.kind) ? [] : [problem('price.kind', `${field}.kind`, { kind: line.kind })],
      () => line.kind,
    ),
    amount: lineAmount(line, digits, field),
    taxes: ratedTaxes(line.taxes, `${field}.taxes`),
  })
}

const amountItems = (amounts: readonly DocumentAmount[], digits: MinorDigits, field: string) =>
  gatherList(
    amounts.map(({ amount, taxes }, i) =>
      gather({
        amount: whenGood(parseMinorExact(amount, digits, `${field}[${i}].amount`), exact =>
          good(BigInt(exact)),
        ),
        taxes: ratedTaxes(taxes, `${field}[${i}].taxes`),
      }),
    ),
  )

const mostTaxes = 20

function ratedTaxes(taxes: readonly Tax[], field: string): Checked<RatedTax[]> {
  if (taxes.length > mostTaxes) return bad([problem('price.tooManyTaxes', field, { most: mostTaxes })])
  const rated = gatherList(taxes.map((tax, i) => ratedTax(tax, `${field}[${i}]`)))
  return whenGood(rated, list => {
    const groups = list.map(taxGroup)
    const twice = list.flatMap((tax, i) =>
      groups.indexOf(taxGroup(tax)) < i
        ? [problem('price.taxTwice', `${field}[${i}]`, { tax: tax.code })]
        : [],
    )
    return unless(twice, () => list)
  })
}

const ratedTax = ({ code, rate }: Tax, field: string): Checked<RatedTax> =>
  gather({
    code: unless(code === '' ? [problem('price.taxCode', `${field}.code`)] : [], () => code),
    rate: parseNonNegative(rate, `${field}.rate`),
  })

function rulesChecked({ basis, mode }: TaxRules): Checked<true> {
  const problems: Problem[] = []
  if (basis !== 'line' && basis !== 'group') problems.push(problem('price.taxBasis', 'tax.basis'))
  if (!roundingModes.includes(mode)) problems.push(problem('price.taxMode', 'tax.mode'))
  return unless(problems, () => true)
}

/** Everything that is taxed: the lines, then the allowances with their sign turned, then the charges. */
export const taxableItems = ({ lines, allowances, charges }: ParsedDocument): TaxableItem[] => [
  ...lines,
  ...allowances.map(({ amount, taxes }) => ({ amount: -amount, taxes })),
  ...charges,
]

function totals(document: ParsedDocument, { tax: rules, partOf }: PriceInput): Checked<Priced> {
  const { lines, allowances, paid, rounding } = document
  const { nets, groups } = taxed(taxableItems(document), rules, partOf)
  const lineNets = nets.slice(0, lines.length)
  const allowed = total(nets.slice(lines.length, lines.length + allowances.length))
  const taxExclusive = total(nets)
  const tax = total(groups.map(group => group.tax))
  const due = taxExclusive + tax - BigInt(paid) + BigInt(rounding)
  return gather({
    lines: gatherList(lineNets.map((net, i) => gather({ net: minorOf(net, `lines[${i}]`) }))),
    sum: minorOf(total(lineNets), 'lines'),
    allowances: minorOf(-allowed, 'allowances'),
    charges: minorOf(taxExclusive - total(lineNets) - allowed, 'charges'),
    taxExclusive: minorOf(taxExclusive, 'lines'),
    taxes: gatherList(groups.map(pricedTax)),
    tax: minorOf(tax, 'lines'),
    taxInclusive: minorOf(taxExclusive + tax, 'lines'),
    paid: good(paid),
    rounding: good(rounding),
    due: minorOf(due, 'lines'),
  })
}

const pricedTax = ({ code, rate, taxable, tax }: Taxed['groups'][number]): Checked<PricedTax> =>
  gather({
    code: good(code),
    rate: good(rate),
    taxable: minorOf(taxable, 'lines'),
    tax: minorOf(tax, 'lines'),
  })

const total = (amounts: readonly bigint[]): bigint => amounts.reduce((sum, amount) => sum + amount, 0n)
