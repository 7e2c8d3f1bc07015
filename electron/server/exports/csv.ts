import { Readable } from 'node:stream'
import { stringify } from 'csv-stringify'
import type { Table } from '../../../db/exports/table.ts'
import type { Read } from '../../../db/file/ledger.ts'

/** What a spreadsheet would run as a formula has a straight quote set before it; amounts stay figures. */
const guarded = (amounts: readonly string[]) => ({
  string: (value: string, { column }: { column?: string | number }) => ({
    value,
    escape_formulas: !amounts.includes(String(column)),
  }),
})

/**
 * The table as CSV (RFC 4180: CRLF, quotes doubled, a header line), row by row. Unless `exact`, a cell that begins with
 * `=`, `+`, `-`, `@`, a tab or a carriage return is neutralised (OWASP ASVS 5.0, 1.2.10); `exact` gives every text as it is
 * in the ledger.
 */
export const csv = (table: Table, read: Read, { exact }: { exact: boolean }): ReadableStream =>
  Readable.toWeb(
    Readable.from(table.rows(read)).pipe(
      stringify({
        header: true,
        columns: [...table.columns],
        record_delimiter: '\r\n',
        quoted_match: /[\r\n]/,
        ...(exact ? {} : { cast: guarded(table.amounts) }),
      }),
    ),
  ) as ReadableStream
