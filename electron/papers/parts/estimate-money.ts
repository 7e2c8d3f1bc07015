import { minor } from '../../../core/money/minor.ts'
import type { EstimateContents, EstimateSection } from '../../../core/papers/contents.ts'
import { type Block, type Section, section } from '../kit/flow.ts'
import { styles } from '../kit/styles.ts'
import { cautions } from './cautions.ts'
import { piece, ruledEntry } from './entry.ts'
import { moneyLines } from './money-lines.ts'
import { clockLine, clockMarks, type Desk } from './speech.ts'
import { kept } from './table.ts'
import { priceTotals, totals } from './totals.ts'

type Estimated = Omit<EstimateContents, 'kind' | 'number'>

/** The lines and what they come to: of the one clock, or clock by clock with what all come to together. */
export function estimateMoney(d: Desk, contents: Estimated, showWorking: boolean): Section[] {
  const { papers } = d.words
  const { sections } = contents
  if (!sections)
    return [
      moneyLines(d, contents, showWorking),
      section(...totals(d, priceTotals(d, contents, papers.totals.taxInclusive))),
    ]
  return [
    ...sections.flatMap(one => ofOneClock(d, contents, one, showWorking)),
    section(...totals(d, priceTotals(d, contents, papers.estimate.together))),
  ]
}

/** One clock with its number, its lines and its own total: by that it is agreed and billed. */
function ofOneClock(d: Desk, { tax }: Estimated, one: EstimateSection, showWorking: boolean): Section[] {
  const { papers } = d.words
  const money = { ...one, tax }
  return [
    section(...kept(heading(d, one))),
    moneyLines(d, money, showWorking),
    section(
      ...totals(d, priceTotals(d, money, papers.estimate.ofRepair(one.repairNumber))),
      ...openEntries(d, one),
      ...cautions(d, one.cautions),
    ),
  ]
}

function heading(d: Desk, { repairNumber, clock, supplement }: EstimateSection): Block[] {
  const { papers } = d.words
  const pieces = [
    piece(clock ? clockLine(d, clock) : '', styles.strong),
    piece(clock ? clockMarks(d, clock) : ''),
    piece(supplement ? papers.supplementTitle : '', styles.small),
  ]
  return ruledEntry(d.sheet, `${papers.repair} ${repairNumber}`, pieces)
}

type Open = Pick<EstimateSection, 'agreedBefore' | 'range' | 'estimatedOn' | 'priced'>

/** What of a clock's sum is open: agreed before a supplement, its upper end, and when the clock may be ready. */
export function openEntries(
  { sheet, words, write }: Desk,
  { agreedBefore, range, estimatedOn, priced }: Open,
): Block[] {
  const say = words.papers.estimate
  const together =
    agreedBefore === undefined ? undefined : minor(agreedBefore + (range?.high ?? priced.taxInclusive))
  const entries: readonly (readonly [string, string | undefined])[] = [
    [say.agreedBefore, agreedBefore === undefined ? undefined : write.money(agreedBefore)],
    [say.agreedWith, together === undefined ? undefined : say.agreedWithSaid(write.money(together))],
    [say.range, range && say.rangeSaid(write.money(range.low), write.money(range.high))],
    [say.estimatedDate, estimatedOn && write.date(estimatedOn)],
  ]
  return entries.flatMap(([label, text]) => (text ? ruledEntry(sheet, label, [piece(text)]) : []))
}
