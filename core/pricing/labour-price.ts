import { gather, whenGood } from '../checked.ts'
import { addDecimals, decimalText, parseNonNegative } from '../decimal/decimal.ts'
import { currencyDigits, minorText, parseAmount } from '../money/minor.ts'
import { percentOf, times } from '../money/scaled.ts'
import type { WorkingStep } from '../papers/contents.ts'
import { bad, type Checked, problem } from '../problems.ts'
import type { Form } from '../vocabulary/clock.ts'
import type { Work } from '../vocabulary/work.ts'
import { bookHours, type PriceBook } from './price-book.ts'
import { parsePrice, type Quoted, quoted } from './quoted.ts'

/** The work to be priced. */
export interface LabourAsked {
  readonly work: Work
  readonly form: Form
  readonly trains: number
  /** Hours found at the strip beyond the book's, decimal text. */
  readonly furtherHours?: string | undefined
  readonly rush?: boolean | undefined
}

/**
 * Hours by the book and beyond it × bench rate, no less than the minimum charge, and what rush work adds to that.
 * Problems: `book.noHours` (the book does not name such work), `money.unknownCurrency`, figures that are none.
 */
export function labourPrice(book: PriceBook, asked: LabourAsked, currency: string): Checked<Quoted> {
  const entry = bookHours(book, asked.work, asked.form, asked.trains)
  if (!entry) return bad([problem('book.noHours', 'work', { trains: asked.trains })])
  const figures = gather({
    digits: currencyDigits(currency),
    hours: parseNonNegative(entry.hours, 'hours'),
    further: parseNonNegative(asked.furtherHours ?? '0', 'furtherHours'),
    rate: parsePrice(book.benchRate, 'benchRate'),
    minimum: parseAmount(book.minimumCharge, currency, 'minimumCharge'),
    rush: parseNonNegative(asked.rush ? book.rushPercent : '0', 'rushPercent'),
  })
  return whenGood(figures, ({ digits, hours, further, rate, minimum, rush }) => {
    const all = addDecimals(hours, further)
    const byHours = times(rate, all, digits)
    const charged = byHours < BigInt(minimum) ? BigInt(minimum) : byHours
    const added = percentOf(charged, rush)
    const steps: WorkingStep[] = [{ code: 'bookHours', values: { hours: decimalText(hours) } }]
    if (further.units > 0n) steps.push({ code: 'furtherHours', values: { hours: decimalText(further) } })
    steps.push({ code: 'hoursAtRate', values: { hours: decimalText(all), rate: decimalText(rate) } })
    if (charged > byHours)
      steps.push({ code: 'minimumCharge', values: { minimum: minorText(minimum, currency) } })
    if (asked.rush)
      steps.push({ code: 'rush', values: { percent: decimalText(rush), added: minorText(added, currency) } })
    return quoted(charged + added, steps)
  })
}
