import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import type { PaperSize } from '../../core/papers/sizes.ts'
import { code, id } from './columns.ts'

/** The PDF of an issued document as it was first drawn; its bytes stand beside the ledger. `id` is the document's. */
export const keptPapers = sqliteTable('kept_papers', {
  id: id(),
  hash: text().notNull(),
  bytes: integer().notNull(),
  size: code<PaperSize>(),
  drawnBy: text().notNull(),
})
