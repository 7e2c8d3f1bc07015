import { and, eq, inArray, sql } from 'drizzle-orm'
import type { CautionFacts } from '../../core/cautions/cautions.ts'
import { refusedWork } from '../../core/cautions/refused-work.ts'
import { gatherList } from '../../core/checked.ts'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { PaperLine } from '../../core/papers/contents.ts'
import { type BookFacts, type BookLine, bookLine, sameFigures } from '../../core/pricing/book-line.ts'
import { estimateFeesIn } from '../../core/pricing/estimate-fees.ts'
import { bad, type Checked, good, type Problem, problem, problemsUnder } from '../../core/problems.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Read } from '../file/ledger.ts'
import { amongAsked, askedId, question, these } from '../rows/question.ts'
import { known } from '../rows/refusal.ts'
import { partRow } from '../rows/stock.ts'
import { clocks, documents, repairs } from '../schema/index.ts'
import { repairBalance } from './balance.ts'
import type { RepairRow } from './facts.ts'
import type { LineEntry } from './line-entry.ts'

const visitsOf = question(read =>
  read
    .select({ id: repairs.id })
    .from(repairs)
    .where(and(eq(repairs.clockId, askedId), eq(repairs.ownerId, sql.placeholder('ownerId')))),
)

const billsOf = question(read =>
  read
    .select({ contents: documents.contents })
    .from(documents)
    .where(and(amongAsked(documents.repairId), inArray(documents.kind, ['invoice', 'credit-note']))),
)

/** The lines of invoices and credit notes on repairs of this clock for this owner that are paid. */
function paidLines(read: Read, { clockId, ownerId }: RepairRow): PaperLine[] {
  const visits = visitsOf(read)
    .all({ id: clockId, ownerId })
    .map(({ id }) => id)
    .filter(id => repairBalance(read, id).due <= 0)
  return billsOf(read)
    .all(these(visits))
    .flatMap(({ contents }) => (JSON.parse(contents) as { lines: PaperLine[] }).lines)
}

/** Fees for estimates of this clock that its owner was billed, has paid, and was not credited yet. */
export function feePaidMinor(read: Read, repair: RepairRow, currency: string): Minor {
  const fees = estimateFeesIn(paidLines(read, repair), currency)
  return fees.ok ? fees.value : minor(0)
}

type Clock = typeof clocks.$inferSelect

function bookFacts(
  read: Read,
  repair: RepairRow,
  clock: Clock,
  entry: LineEntry,
  currency: string,
): BookFacts {
  const part = entry.priced?.from === 'part' && entry.partId !== null ? partRow(read, entry.partId) : null
  return {
    form: clock.form,
    trains: clock.trains,
    part: part && { costMinor: part.unitCostMinor, priceMinor: part.unitPriceMinor },
    feePaidMinor: entry.priced?.from === 'fee-credit' ? feePaidMinor(read, repair, currency) : minor(0),
  }
}

/** What the book says of a line; refused where the line says other figures, so that no one is shown a working that is not its own. */
function told(line: Checked<BookLine>, entry: LineEntry, field: string): Checked<BookLine> {
  if (!line.ok) return bad(problemsUnder(`${field}.priced`, line.problems))
  const { kind, quantity, unit } = line.value
  return kind === entry.kind && sameFigures(line.value, entry)
    ? line
    : bad([problem('book.otherFigures', `${field}.unit`, { quantity, unit })])
}

function refusal(clock: CautionFacts, entry: LineEntry, field: string): Problem[] {
  const caution = entry.work && refusedWork(clock, entry.work)
  return caution ? [problem(`refused.${caution}`, `${field}.description`)] : []
}

/**
 * What the price book says of each line that was taken from it, worked out anew here; null for a line written by hand.
 * Problems: figures that are not the book's, and work that must not be done on this clock.
 */
export function bookLines(
  read: Read,
  repair: RepairRow,
  entries: readonly LineEntry[],
  { prices, place: { currency } }: Settings,
): Checked<(BookLine | null)[]> {
  const clock = known(
    read.select().from(clocks).where(eq(clocks.id, repair.clockId)).get(),
    'clock.unknown',
    'clockId',
  )
  const lines = entries.map((entry, i): Checked<BookLine | null> => {
    const field = `lines[${i}]`
    const line = entry.priced
      ? told(
          bookLine(prices, entry.priced, bookFacts(read, repair, clock, entry, currency), currency),
          entry,
          field,
        )
      : good(null)
    const work = (line.ok && line.value?.work) || entry.work
    const refused = refusal(clock, { ...entry, work }, field)
    return refused.length > 0 ? bad(refused) : line
  })
  return gatherList(lines)
}
