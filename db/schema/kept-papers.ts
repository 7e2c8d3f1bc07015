import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import type { HomeKind } from '../../core/papers/kinds.ts'
import type { PaperSize } from '../../core/papers/sizes.ts'
import { code, id } from './columns.ts'

/** A working paper as it was handed to the owner. `ofId` is of what its kind is drawn of (core/papers/kinds.ts). */
export const handedPapers = sqliteTable('handed_papers', {
  id: id(),
  kind: code<HomeKind>(),
  ofId: integer().notNull(),
  ownerId: integer().notNull(),
  repairId: integer(),
  handedAt: text().notNull(),
  handedOn: text().notNull(),
  personId: integer(),
  size: code<PaperSize>(),
  contents: text().notNull(),
  contentsHash: text().notNull(),
})

/** The PDFs of papers as they were first drawn; their bytes stand beside the ledger. `id` is the paper's. */
const drawnPapers = (name: string) =>
  sqliteTable(name, {
    id: id(),
    hash: text().notNull(),
    bytes: integer().notNull(),
    size: code<PaperSize>(),
    drawnBy: text().notNull(),
  })

/** Of issued documents. */
export const keptPapers = drawnPapers('kept_papers')

/** Of working papers that were handed out. */
export const keptHandedPapers = drawnPapers('kept_handed_papers')
