import type { SQL } from 'drizzle-orm'
import { type Minor, minorText } from '../../core/money/minor.ts'
import type { Read } from '../file/ledger.ts'
import { byId } from '../rows/by-id.ts'
import { readSettings } from '../rows/settings.ts'

/** A cell as it is exported; nothing where nothing is known. */
export type Cell = string | number | null

/** A table to be taken out of the ledger. */
export interface Table {
  readonly columns: readonly string[]
  /** Columns of money: decimal text in major units, never a formula. */
  readonly amounts: readonly string[]
  readonly rows: (read: Read) => Iterable<Readonly<Record<string, Cell>>>
}

type Row = Record<string, Cell> & { id: number }

interface Listed {
  readonly columns: readonly string[]
  readonly amounts?: readonly string[]
  /** The rows whose id is above `after`, in the order of their ids. */
  readonly page: (after: number, limit: number) => SQL
}

/** A row with its amounts in major units of its own currency, or of the shop's where it names none. */
const inMajorUnits = (row: Row, amounts: readonly string[], currency: string): Row => {
  const own = typeof row.currency === 'string' ? row.currency : currency
  const texts = amounts.map(name => [name, row[name] === null ? null : minorText(row[name] as Minor, own)])
  return { ...row, ...Object.fromEntries(texts) }
}

/** The table of what `page` selects; amounts are selected in minor units. */
export const table = ({ columns, amounts = [], page }: Listed): Table => ({
  columns,
  amounts,
  *rows(read) {
    const { currency } = readSettings(read).place
    for (const row of byId((after, limit) => read.all<Row>(page(after, limit))))
      yield inMajorUnits(row, amounts, currency)
  },
})
