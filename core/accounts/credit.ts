import { gatherList, whenGood } from '../checked.ts'
import { type Decimal, decimalOf, decimalText, parsePositive, subtractDecimals } from '../decimal/decimal.ts'
import { type Minor, minor, minorText, parseMinor } from '../money/minor.ts'
import type { PaperLine } from '../papers/contents.ts'
import type { PricedContents } from '../papers/price-input.ts'
import { lineWorking } from '../pricing/line-working.ts'
import { type Priced, priced } from '../pricing/price.ts'
import type { TaxPart } from '../pricing/price-input.ts'
import { bad, type Checked, good, problem } from '../problems.ts'
import { amountOf, type LineLeft, linesLeft, taxParts } from './lines-left.ts'

/** What is to be credited of one line of an invoice: so many of it, or an amount of it in major units; both without sign. */
export interface CreditChoice {
  /** The line's place, from 0. */
  readonly line: number
  readonly quantity: string | null
  readonly amount: string | null
}

/** What a credit note carries of its invoice: the lines turned, what they come to, and of what whole they are a part. */
export interface Credit {
  readonly lines: PaperLine[]
  readonly priced: Priced
  readonly partOf?: readonly TaxPart[]
}

type CreditLine = Omit<PaperLine, 'net'>

/** A line of the invoice with what is left of it. */
interface Open {
  readonly line: PaperLine
  readonly index: number
  readonly left: LineLeft
  readonly currency: string
}

const turned = (text: string): string => (text.startsWith('-') ? text.slice(1) : `-${text}`)
const unsigned = (text: string): string => text.replace('-', '')

/** So many of the line as `quantity` says, at its own unit price. */
function plainly({ line, index }: Open, quantity: string): CreditLine {
  const { net: _net, charge: _charge, allowance: _allowance, ...rest } = line
  const taken = { ...rest, quantity, credits: { line: index, by: 'quantity' as const } }
  return { ...taken, working: lineWorking(taken) }
}

/** The line's whole rest; what its unit price alone does not come to is a charge or an allowance. */
function restByQuantity(open: Open): CreditLine {
  const taken = plainly(open, turned(open.left.quantity))
  const more = minor(-open.left.amount - amountOf(taken, open.currency))
  if (more === 0) return taken
  return { ...taken, [more > 0 ? 'charge' : 'allowance']: minorText(minor(Math.abs(more)), open.currency) }
}

/** An amount of the line, with the sign it is credited with. */
function byAmount({ line, index, currency }: Open, amount: Minor): CreditLine {
  const { kind, description, taxes, work } = line
  return {
    kind,
    description,
    taxes,
    quantity: amount < 0 ? '-1' : '1',
    unit: minorText(minor(Math.abs(amount)), currency),
    working: [],
    ...(work ? { work } : {}),
    credits: { line: index, by: 'amount' },
  }
}

const isNone = (quantity: string): boolean => decimalOf(quantity)?.units === 0n

const theRest = (open: Open): CreditLine =>
  isNone(open.left.quantity) && open.left.amount !== 0
    ? byAmount(open, minor(-open.left.amount))
    : restByQuantity(open)

const overAmount = ({ left, currency }: Open, field: string) =>
  bad([problem('credit.amountLeft', field, { left: minorText(minor(Math.abs(left.amount)), currency) })])

const creditedQuantity = (open: Open, typed: string, field: string): Checked<CreditLine> =>
  whenGood(parsePositive(typed, field), quantity => {
    const most = unsigned(open.left.quantity)
    const rest = subtractDecimals(decimalOf(most) as Decimal, quantity).units
    if (rest < 0n) return bad([problem('credit.quantityLeft', field, { left: most })])
    if (rest === 0n) return good(theRest(open))
    const text = decimalText(quantity)
    const some = plainly(open, open.line.quantity.startsWith('-') ? text : `-${text}`)
    const within = Math.abs(amountOf(some, open.currency)) <= Math.abs(open.left.amount)
    return within ? good(some) : overAmount(open, field)
  })

const creditedAmount = (open: Open, typed: string, field: string): Checked<CreditLine> =>
  whenGood(parseMinor(typed, open.currency, field), amount => {
    if (amount <= 0) return bad([problem('number.notPositive', field)])
    if (amount > Math.abs(open.left.amount)) return overAmount(open, field)
    return good(byAmount(open, minor(open.left.amount < 0 ? amount : -amount)))
  })

function chosen(
  all: readonly Open[],
  { line, quantity, amount }: CreditChoice,
  path: string,
): Checked<CreditLine> {
  const open = all[line]
  if (!open) return bad([problem('credit.noLine', `${path}.line`)])
  if ((quantity === null) === (amount === null)) return bad([problem('credit.eitherWay', `${path}.quantity`)])
  if (isNone(open.left.quantity) && open.left.amount === 0)
    return bad([problem('credit.lineCredited', `${path}.${quantity === null ? 'amount' : 'quantity'}`)])
  return quantity === null
    ? creditedAmount(open, amount ?? '', `${path}.amount`)
    : creditedQuantity(open, quantity, `${path}.quantity`)
}

function chosenLines(all: readonly Open[], choices: readonly CreditChoice[]): Checked<CreditLine[]> {
  const places = choices.map(({ line }) => line)
  const lines = choices.map((choice, i) =>
    places.indexOf(choice.line) < i
      ? bad([problem('credit.lineTwice', `lines[${i}].line`)])
      : chosen(all, choice, `lines[${i}]`),
  )
  return gatherList(lines)
}

const total = (papers: readonly PricedContents[]): number =>
  papers.reduce((sum, paper) => sum + paper.priced.taxInclusive, 0)

/** Whether credit notes have left anything of an invoice. */
export const isCredited = (invoice: PricedContents, credits: readonly PricedContents[]): boolean =>
  credits.length > 0 && linesLeft(invoice, credits).every(({ amount }) => amount === 0)

/**
 * A credit of an invoice after `credits` before it: of the lines chosen, or of everything that is left (`choices` null). The first
 * of everything mirrors the invoice; any other bears the share of the invoice's frozen taxes that it takes back, so that all
 * together never come to more than the invoice and, once nothing is left, to exactly it. Problems: `credit.…` by line,
 * `credit.moreThanLeft` where the lines left to stand bear a sum below nothing.
 */
export function creditOf(
  invoice: PricedContents,
  credits: readonly PricedContents[],
  choices: readonly CreditChoice[] | null,
): Checked<Credit> {
  const { currency, tax } = invoice
  const left = linesLeft(invoice, credits)
  const all = invoice.lines.map((line, index) => ({ line, index, currency, left: left[index] as LineLeft }))
  const whole = choices === null && credits.length === 0
  const open = whole ? all : all.filter(one => one.left.amount !== 0)
  const lines = choices === null ? good(open.map(theRest)) : chosenLines(all, choices)
  const partOf = whole ? {} : { partOf: taxParts(invoice, credits) }
  return whenGood(lines, taken =>
    whenGood(priced({ currency, tax, lines: taken, ...partOf }), sums => {
      const rest = total([invoice, ...credits])
      if (rest + sums.taxInclusive < 0 !== rest < 0 && rest + sums.taxInclusive !== 0)
        return bad([problem('credit.moreThanLeft', 'lines', { left: minorText(minor(rest), currency) })])
      const net = (i: number) => sums.lines[i]?.net ?? minor(0)
      return good({ lines: taken.map((line, i) => ({ ...line, net: net(i) })), priced: sums, ...partOf })
    }),
  )
}
