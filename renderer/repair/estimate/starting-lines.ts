import type { Words } from '../../../core/words/en/index.ts'
import type { Book } from '../book/use-book.ts'
import type { Repair } from '../repair.ts'
import { blankLine, type TypedLine } from '../typed-line.ts'

type Line = Repair['estimates'][number]['lines'][number]

/** The line of an earlier version: still the book's where the book says the same today, otherwise at the price that was told. */
function lineAgain(line: Line, book: Book): TypedLine {
  const { kind, description, quantity, unit, charge = '0', work = null, priced, partId, findingId } = line
  const again = { kind, description, quantity, unit, charge, work, priced, partId, findingId }
  // What a part costs may not be read yet; the ledger looks at it when the estimate is written.
  return priced?.from === 'part' || book.stillOf(again) ? again : { ...again, priced: null }
}

/**
 * What was found at the strip and waits for the owner's word, a line each, where no estimate speaks of it yet. The line
 * names the work; the finding is the bench's own note and stands beside it.
 */
function foundLines({ bench, estimates }: Repair, benchRate: string, words: Words): TypedLine[] {
  const written = estimates.flatMap(({ lines }) => lines.map(({ findingId }) => findingId))
  return bench.findings
    .filter(({ id, needsWord, struckReason }) => needsWord && !struckReason && !written.includes(id))
    .map(({ id, component }) => ({
      ...blankLine,
      description: words.repair.estimateForm.workOn(words.components[component]),
      unit: benchRate,
      findingId: id,
    }))
}

/** Whether the owner has given a go-ahead on this repair: what is written then is a supplement. */
export const isAgreed = ({ words }: Repair): boolean => words.some(({ answer }) => answer === 'go-ahead')

/** What writing begins with: what was found since the go-ahead, or before it the last version again. */
export const startingLines = (view: Repair, book: Book, benchRate: string, words: Words): TypedLine[] =>
  isAgreed(view)
    ? foundLines(view, benchRate, words)
    : (view.estimates.at(-1)?.lines ?? []).map(line => lineAgain(line, book))
