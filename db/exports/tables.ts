import { documentLines, documents, drawerCounts, payments, writeOffs } from './money.ts'
import { clocks, contacts, owners } from './register.ts'
import type { Table } from './table.ts'
import { dayBook, labour, repairs, stock, stockMoves } from './work.ts'

/** Every table that can be taken out, by the name of its file. A new one is one definition and one entry. */
export const tables = {
  owners,
  contacts,
  clocks,
  repairs,
  documents,
  'document-lines': documentLines,
  payments,
  'write-offs': writeOffs,
  'drawer-counts': drawerCounts,
  stock,
  'stock-moves': stockMoves,
  labour,
  'day-book': dayBook,
} satisfies Record<string, Table>

export type TableName = keyof typeof tables
