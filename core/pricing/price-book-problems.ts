import { parseNonNegative } from '../decimal/decimal.ts'
import { parseAmount } from '../money/minor.ts'
import { type Problem, problem, problemsOf } from '../problems.ts'
import { parsedTiers } from './cost-price.ts'
import type { BookHours, PriceBook } from './price-book.ts'

/**
 * What is wrong with a price book, amounts in `currency`: figures that are none or negative, `book.hoursTwice`,
 * `book.markupOrder`. Fields are paths such as `hours[2].hours`.
 */
export function priceBookProblems(book: PriceBook, currency: string): Problem[] {
  const { callOut, hours } = book
  const decimals = {
    benchRate: book.benchRate,
    outsidePercent: book.outsidePercent,
    rushPercent: book.rushPercent,
    'callOut.freeDistance': callOut.freeDistance,
    'callOut.perDistance': callOut.perDistance,
  }
  const amounts = {
    estimateFee: book.estimateFee,
    minimumCharge: book.minimumCharge,
    'callOut.fee': callOut.fee,
    'callOut.eachFurtherClock': callOut.eachFurtherClock,
  }
  return [
    ...Object.entries(decimals).flatMap(([field, text]) => problemsOf(parseNonNegative(text, field))),
    ...Object.entries(amounts).flatMap(([field, text]) => problemsOf(parseAmount(text, currency, field))),
    ...hours.flatMap((entry, i) => hoursProblems(entry, hours.slice(0, i), `hours[${i}]`)),
    ...problemsOf(parsedTiers(book.markup)),
  ]
}

function hoursProblems(entry: BookHours, before: readonly BookHours[], field: string): Problem[] {
  const { work, form, trains } = entry
  const twice = before.some(other => other.work === work && other.form === form && other.trains === trains)
  return [
    ...problemsOf(parseNonNegative(entry.hours, `${field}.hours`)),
    ...(twice ? [problem('book.hoursTwice', `${field}.work`)] : []),
  ]
}
