import type { InferResponseType } from 'hono/client'
import type { Words } from '../../core/words/en/index.ts'
import type { Formats } from '../../core/words/format.ts'
import type { api } from '../api.ts'
import { belongingWords } from '../clock-words.ts'

/** The counter's list as the ledger tells it. */
export type View = InferResponseType<typeof api.pages.counter.$get>

/** One repair on it. */
export type CounterRow = View['rows'][number]

function estimateWords(
  { estimate }: Pick<CounterRow, 'estimate'>,
  { counter }: Words,
  formats: Formats,
): string {
  if (!estimate) return ''
  const { version, sentAt, validUntil } = estimate
  return sentAt && validUntil
    ? counter.estimateOut(version, formats.shortDate(validUntil))
    : counter.estimateUnsent(version)
}

type SecondLineOf = Omit<CounterRow, 'belongings'> & {
  readonly belongings: readonly Pick<CounterRow['belongings'][number], 'item' | 'position' | 'count'>[]
}

/** The second line of a repair: what the counter hand needs to know before speaking to its owner. */
export function secondLine(row: SecondLineOf, words: Words, formats: Formats): string {
  const { counter } = words
  const parts: Record<CounterRow['group'], readonly string[]> = {
    comeback: [
      row.covered ? counter.covered : counter.notCovered,
      row.partsIn ? counter.partsIn : '',
      row.fault,
    ],
    'to-collect': [
      row.uncollected ? counter.uncollected : '',
      row.toldAt ? counter.told(formats.instant(row.toldAt)) : counter.untold,
      ...row.belongings.map(belonging => belongingWords(words, belonging)),
    ],
    'awaiting-word': [estimateWords(row, words, formats), row.fault],
    'to-send': [row.fault],
    late: [row.partsIn ? counter.partsIn : '', row.fault, estimateWords(row, words, formats)],
    'parts-in': [row.fault],
    'to-estimate': [row.fault],
    'in-hand': [row.fault],
  }
  return parts[row.group].filter(Boolean).join(' · ')
}
