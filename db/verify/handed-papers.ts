import { asc, eq, gt } from 'drizzle-orm'
import type { WorkingContents } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { byId } from '../rows/by-id.ts'
import type { HandedRow } from '../rules/frozen-papers.ts'
import { owners, repairs, handedPapers as table } from '../schema/index.ts'
import { type Check, type Fault, fault } from './check.ts'
import { frozenFaults, recomputes } from './papers.ts'

const rows = (read: Read) =>
  byId((after, limit) =>
    read.select().from(table).where(gt(table.id, after)).orderBy(asc(table.id)).limit(limit).all(),
  )

/** Of what a paper is that was handed out: the repair's number, or whose account. */
const of = (read: Read, { repairId, ownerId }: HandedRow): string | number | undefined =>
  repairId === null
    ? read.select({ name: owners.name }).from(owners).where(eq(owners.id, ownerId)).get()?.name
    : read.select({ number: repairs.number }).from(repairs).where(eq(repairs.id, repairId)).get()?.number

/** What tells a paper that was handed out from others. */
export const namedHanded = (read: Read, row: HandedRow): Fault['values'] => ({
  kind: row.kind,
  of: of(read, row) ?? '',
  handedOn: row.handedOn,
})

function* contentsFaults(
  row: HandedRow,
  values: Fault['values'],
  contents: WorkingContents,
): Generator<Fault> {
  const columns = { kind: row.kind, issuedOn: row.handedOn }
  for (const field of ['kind', 'issuedOn'] as const)
    if (columns[field] !== contents[field])
      yield fault('paper.column', { ...values, field, kept: columns[field], says: contents[field] })
  if ('priced' in contents && !recomputes(contents)) yield fault('paper.recomputes', values)
}

/** Every working paper that was handed out: its contents as they were frozen, and kind and day beside them. */
export const handedPapers: Check = function* ({ read }) {
  let looked = 0
  for (const row of rows(read)) {
    const values = namedHanded(read, row)
    yield* frozenFaults<WorkingContents>(row, values, contents => contentsFaults(row, values, contents))
    looked += 1
  }
  return looked
}
