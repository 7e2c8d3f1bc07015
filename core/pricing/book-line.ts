import { whenGood } from '../checked.ts'
import { decimalOf, decimalText } from '../decimal/decimal.ts'
import { type Minor, minor, minorText, parseAmount } from '../money/minor.ts'
import type { WorkingStep } from '../papers/contents.ts'
import { bad, type Checked, good, problem } from '../problems.ts'
import { type Form, forms } from '../vocabulary/clock.ts'
import type { LineWork, Work } from '../vocabulary/work.ts'
import { callOutPrice } from './call-out-price.ts'
import { outsidePrice, partPrice } from './cost-price.ts'
import type { LineKind } from './kinds/index.ts'
import { labourPrice } from './labour-price.ts'
import type { PriceBook } from './price-book.ts'
import type { Quoted } from './quoted.ts'

/** What is asked of the price book for one line; figures are decimal texts, money in major units. */
export type BookAsked =
  | {
      readonly from: 'labour'
      readonly work: Work
      /** Beyond the book's, found at the strip. */
      readonly furtherHours: string
      readonly rush: boolean
    }
  /** A part of the stores: by the book's markup on its cost, or at the price it has there. */
  | { readonly from: 'part'; readonly by: 'markup' | 'price'; readonly pieces: number }
  | { readonly from: 'outside'; readonly work: Work | null; readonly cost: string }
  | { readonly from: 'call-out'; readonly distance: string; readonly clocks: number }
  | { readonly from: 'estimate-fee' }
  /** Takes off a fee for an estimate that the owner has paid. */
  | { readonly from: 'fee-credit' }

/** What is on record and decides the price besides the book. */
export interface BookFacts {
  readonly form: Form
  /** null where nobody has looked yet: then as many as are usual for the form are supposed, and the working says so. */
  readonly trains: number | null
  /** The part of the stores that the line names. */
  readonly part: { readonly costMinor: Minor; readonly priceMinor: Minor } | null
  /** Fees for estimates of this clock that were billed, paid and not credited yet. */
  readonly feePaidMinor: Minor
}

/** A line as the price book writes it, before tax. */
export interface BookLine {
  readonly kind: LineKind
  readonly work: LineWork | null
  readonly quantity: string
  readonly unit: string
  /** What is added to quantity × unit, such as for rush work. */
  readonly charge: string
  readonly working: readonly WorkingStep[]
}

type Ask<From extends BookAsked['from']> = Extract<BookAsked, { from: From }>

interface Desk {
  readonly book: PriceBook
  readonly facts: BookFacts
  readonly currency: string
}

const job = (
  kind: LineKind,
  work: LineWork | null,
  { amount, working }: Quoted,
  currency: string,
): BookLine => ({ kind, work, quantity: '1', unit: minorText(amount, currency), charge: '0', working })

/** Hours × rate; what the minimum or rush work adds is the line's charge. */
function labour(asked: Ask<'labour'>, { book, facts, currency }: Desk): Checked<BookLine> {
  const { work, furtherHours, rush } = asked
  const { form } = facts
  const trains = facts.trains ?? forms[form].trains
  const supposed: WorkingStep[] =
    facts.trains === null ? [{ code: 'trainsSupposed', values: { trains } }] : []
  const plain = labourPrice({ ...book, minimumCharge: '0' }, { work, form, trains, furtherHours }, currency)
  return whenGood(plain, byHours =>
    whenGood(
      labourPrice(book, { work, form, trains, furtherHours, rush }, currency),
      ({ amount, working }) => {
        const { hours, rate } = hoursAtRate(byHours.working)
        const charge = minorText(minor(amount - byHours.amount), currency)
        return good({
          kind: 'labour',
          work,
          quantity: hours,
          unit: rate,
          charge,
          working: [...supposed, ...working],
        })
      },
    ),
  )
}

function hoursAtRate(working: readonly WorkingStep[]): { hours: string; rate: string } {
  const values = working.find(({ code }) => code === 'hoursAtRate')?.values
  if (!values) throw new Error('labour without hours at a rate')
  return { hours: String(values.hours), rate: String(values.rate) }
}

function part({ by, pieces }: Ask<'part'>, { book, facts, currency }: Desk): Checked<BookLine> {
  if (!facts.part) return bad([problem('book.noPart', 'partId')])
  const { costMinor, priceMinor } = facts.part
  const each: Checked<Quoted> =
    by === 'price'
      ? good({
          amount: priceMinor,
          working: [{ code: 'storesPrice', values: { price: minorText(priceMinor, currency) } }],
        })
      : partPrice(book, minorText(costMinor, currency), currency)
  return whenGood(each, one => {
    const line = job('part', null, one, currency)
    if (pieces === 1) return good(line)
    const many: WorkingStep = { code: 'piecesAtPrice', values: { quantity: pieces, unit: line.unit } }
    return good({ ...line, quantity: String(pieces), working: [...line.working, many] })
  })
}

const outside = ({ work, cost }: Ask<'outside'>, { book, currency }: Desk): Checked<BookLine> =>
  whenGood(outsidePrice(book, cost, currency), price => good(job('outside', work, price, currency)))

const callOut = ({ distance, clocks }: Ask<'call-out'>, { book, currency }: Desk): Checked<BookLine> =>
  whenGood(callOutPrice(book, { distance, clocks }, currency), price =>
    good(job('fee', 'call-out', price, currency)),
  )

function estimateFee(_: Ask<'estimate-fee'>, { book, currency }: Desk): Checked<BookLine> {
  const fee = parseAmount(book.estimateFee, currency, 'estimateFee')
  return whenGood(fee, amount =>
    amount === 0
      ? bad([problem('book.noFee', 'from')])
      : good(
          job('fee', 'estimate-fee', { amount, working: [{ code: 'estimateFee', values: {} }] }, currency),
        ),
  )
}

function feeCredit(_: Ask<'fee-credit'>, { facts, currency }: Desk): Checked<BookLine> {
  const amount = facts.feePaidMinor
  if (amount <= 0) return bad([problem('book.noFeePaid', 'from')])
  const line = job(
    'fee',
    'estimate-fee',
    { amount, working: [{ code: 'feeCredited', values: {} }] },
    currency,
  )
  return good({ ...line, quantity: '-1' })
}

/**
 * The line that the price book writes for what is asked, with its working, or why it cannot. Problems: those of the
 * prices (`book.noHours`, `book.noMarkup`, `book.clocks`, figures that are none), `book.noPart`, `book.noFee`,
 * `book.noFeePaid`.
 */
export function bookLine(
  book: PriceBook,
  asked: BookAsked,
  facts: BookFacts,
  currency: string,
): Checked<BookLine> {
  const desk = { book, facts, currency }
  switch (asked.from) {
    case 'labour':
      return labour(asked, desk)
    case 'part':
      return part(asked, desk)
    case 'outside':
      return outside(asked, desk)
    case 'call-out':
      return callOut(asked, desk)
    case 'estimate-fee':
      return estimateFee(asked, desk)
    case 'fee-credit':
      return feeCredit(asked, desk)
  }
}

/** What a line says of its price. */
export interface LineFigures {
  readonly quantity: string
  readonly unit: string
  readonly charge: string
}

/** Whether two lines have the same quantity, unit price and charge, however they are written. */
export function sameFigures(a: LineFigures, b: LineFigures): boolean {
  const plain = (text: string) => {
    const decimal = decimalOf(text)
    return decimal ? decimalText(decimal) : text
  }
  return (['quantity', 'unit', 'charge'] as const).every(key => plain(a[key]) === plain(b[key]))
}
