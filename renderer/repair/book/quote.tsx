import { refusedWork } from '../../../core/cautions/refused-work.ts'
import { minorDigits } from '../../../core/money/currency.ts'
import { minorOf } from '../../../core/money/minor.ts'
import type { BookLine } from '../../../core/pricing/book-line.ts'
import { lineAmount } from '../../../core/pricing/line-amount.ts'
import { type Checked, problem } from '../../../core/problems.ts'
import { problemText } from '../../../core/words/problem-text.ts'
import { useShop } from '../../shop.tsx'
import { workingWords } from '../money-lines.tsx'
import type { Repair } from '../repair.ts'

/** What the book says to what is asked: the sum with its working, why it cannot say, or why such work is not done here. */
export function Quote({ view: { clock }, told }: { view: Repair; told: Checked<BookLine> | null }) {
  const { words, formats, settings } = useShop()
  if (!told) return <div role="status" />
  if (!told.ok)
    return (
      <div role="status" className="late">
        {told.problems.map(one => problemText(words, one)).join(' ')}
      </div>
    )
  const line = told.value
  const caution = line.work && refusedWork(clock, line.work)
  const amount = lineAmount(line, minorDigits(settings.place.currency) ?? 2, '')
  const net = amount.ok ? minorOf(amount.value, '') : amount
  return (
    <div role="status">
      {caution && <p className="late">{problemText(words, problem(`refused.${caution}`, ''))}</p>}
      {net.ok && <b>{words.priceBook.comesTo(formats.money(net.value))}</b>}{' '}
      <span className="quiet">{workingWords(words, line.working)}</span>
    </div>
  )
}
