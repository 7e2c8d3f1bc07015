import { asc, eq, type SQL } from 'drizzle-orm'
import { isCredited } from '../../core/accounts/credit.ts'
import { linesLeft } from '../../core/accounts/lines-left.ts'
import type { PaperContents } from '../../core/papers/contents.ts'
import type { PaperKind } from '../../core/papers/kinds.ts'
import type { Read } from '../file/ledger.ts'
import { known } from '../rows/refusal.ts'
import { creditsOf } from '../rules/credits.ts'
import { documentRow, frozenContents } from '../rules/frozen-papers.ts'
import * as s from '../schema/index.ts'
import { type Turn, turned } from './turn.ts'

export { taxView } from './tax.ts'

const columns = {
  id: s.documents.id,
  kind: s.documents.kind,
  number: s.documents.number,
  issuedOn: s.documents.issuedOn,
  totalMinor: s.documents.totalMinor,
  taxMinor: s.documents.taxMinor,
  correctsId: s.documents.correctsId,
  owner: { id: s.owners.id, name: s.owners.name },
  repairNumber: s.repairs.number,
}

const documentLines = (read: Read, where: SQL | undefined) =>
  read
    .select(columns)
    .from(s.documents)
    .innerJoin(s.owners, eq(s.owners.id, s.documents.ownerId))
    .leftJoin(s.repairs, eq(s.repairs.id, s.documents.repairId))
    .where(where)

/** Papers, newest first, a page at a time; of one kind where asked. */
export function documentsView(read: Read, { kind, ...turn }: Turn & { kind: PaperKind | null }) {
  const kept = kind ? eq(s.documents.kind, kind) : undefined
  return turned(s.documents.id, turn, kept, ({ where, orderBy, limit }) =>
    documentLines(read, where).orderBy(orderBy).limit(limit).all(),
  )
}

const papersInShort = (read: Read, where: SQL | undefined) =>
  read
    .select({
      id: s.documents.id,
      kind: s.documents.kind,
      number: s.documents.number,
      totalMinor: s.documents.totalMinor,
    })
    .from(s.documents)
    .where(where)
    .orderBy(asc(s.documents.id))
    .all()

/** What of an invoice may still be credited, line by line; null on other papers, and once nothing is left. */
function creditable(read: Read, id: number, contents: PaperContents) {
  if (contents.kind !== 'invoice') return null
  const credits = creditsOf(read, id)
  return isCredited(contents, credits) ? null : linesLeft(contents, credits)
}

/** One paper: its line in the ledger, what it says, the papers that correct it or are corrected by it, and what may still be credited. */
export function paperView(read: Read, id: number) {
  const paper = known(documentLines(read, eq(s.documents.id, id)).get(), 'document.unknown', 'id')
  const contents = frozenContents(documentRow(read, id))
  const [corrects] =
    paper.correctsId === null ? [] : papersInShort(read, eq(s.documents.id, paper.correctsId))
  return {
    paper,
    contents,
    corrects: corrects ?? null,
    correctedBy: papersInShort(read, eq(s.documents.correctsId, id)),
    creditable: creditable(read, id, contents),
  }
}

/** Every paper ever issued, in order. */
export const allDocuments = (read: Read) =>
  read
    .select({
      id: s.documents.id,
      kind: s.documents.kind,
      number: s.documents.number,
      issuedOn: s.documents.issuedOn,
      totalMinor: s.documents.totalMinor,
      taxMinor: s.documents.taxMinor,
    })
    .from(s.documents)
    .orderBy(asc(s.documents.id))
    .all()
