import { isDeepStrictEqual } from 'node:util'
import { asc, eq, gt } from 'drizzle-orm'
import type { PaperContents } from '../../core/papers/contents.ts'
import { type PricedContents, repriced } from '../../core/papers/price-input.ts'
import { hashOf } from '../file/files-beside.ts'
import type { Read } from '../file/ledger.ts'
import { byId } from '../rows/by-id.ts'
import { type DocumentRow, sumsOf } from '../rules/issue.ts'
import { documents, documentTaxes } from '../schema/index.ts'
import { type Check, type Fault, fault } from './check.ts'

const rows = (read: Read) =>
  byId((after, limit) =>
    read
      .select()
      .from(documents)
      .where(gt(documents.id, after))
      .orderBy(asc(documents.id))
      .limit(limit)
      .all(),
  )

/** What tells an issued paper from others. */
export const named = ({ kind, number }: Pick<DocumentRow, 'kind' | 'number'>) => ({ kind, number })

/** What is wrong with frozen contents: they do not fit their hash, cannot be read, or what `inside` finds in them. */
export function* frozenFaults<Contents>(
  row: Pick<DocumentRow, 'contents' | 'contentsHash'>,
  values: Fault['values'],
  inside: (contents: Contents) => Generator<Fault>,
): Generator<Fault> {
  if (hashOf(Buffer.from(row.contents)) !== row.contentsHash) yield fault('paper.hash', values)
  try {
    yield* inside(JSON.parse(row.contents) as Contents)
  } catch (error) {
    yield fault('paper.unreadable', { ...values, reason: String(error) })
  }
}

function* headFaults(row: DocumentRow, contents: PaperContents): Generator<Fault> {
  for (const field of ['kind', 'number', 'issuedOn', 'currency'] as const)
    if (row[field] !== contents[field])
      yield fault('paper.column', { ...named(row), field, kept: row[field], says: String(contents[field]) })
}

/** Whether the frozen lines still price to the frozen figures, by the rules frozen with them. */
export function recomputes(contents: PricedContents): boolean {
  const again = repriced(contents)
  const nets = contents.lines.map(line => ({ net: line.net }))
  return (
    again.ok && isDeepStrictEqual(again.value, contents.priced) && isDeepStrictEqual(again.value.lines, nets)
  )
}

function* sumFaults(read: Read, row: DocumentRow, contents: PaperContents): Generator<Fault> {
  const sums = sumsOf(contents)
  if (!sums.ok) return
  const { total, tax, taxes } = sums.value
  if (row.totalMinor !== total)
    yield fault('paper.total', { ...named(row), kept: row.totalMinor, says: total })
  if (row.taxMinor !== tax) yield fault('paper.tax', { ...named(row), kept: row.taxMinor, says: tax })
  const kept = read
    .select({
      code: documentTaxes.code,
      rate: documentTaxes.rate,
      kind: documentTaxes.kind,
      taxable: documentTaxes.taxableMinor,
      tax: documentTaxes.taxMinor,
    })
    .from(documentTaxes)
    .where(eq(documentTaxes.documentId, row.id))
    .orderBy(asc(documentTaxes.id))
    .all()
  const inOrder = taxes.map(({ code, rate, kind, taxable, tax }) => ({ code, rate, kind, taxable, tax }))
  if (!isDeepStrictEqual(kept, inOrder)) yield fault('paper.taxes', named(row))
}

function* contentsFaults(read: Read, row: DocumentRow, contents: PaperContents): Generator<Fault> {
  yield* headFaults(row, contents)
  if ('priced' in contents && !recomputes(contents)) yield fault('paper.recomputes', named(row))
  yield* sumFaults(read, row, contents)
}

/** Every issued paper: its contents as they were frozen, pricing to the same figures, and the sums beside them. */
export const papers: Check = function* ({ read }) {
  let looked = 0
  for (const row of rows(read)) {
    yield* frozenFaults<PaperContents>(row, named(row), contents => contentsFaults(read, row, contents))
    looked += 1
  }
  return looked
}
