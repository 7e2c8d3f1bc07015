import { createHash } from 'node:crypto'
import Database from 'better-sqlite3'

type Row = Record<string, unknown>

/** Every table of a closed ledger with its number of rows and a digest of them, each row as `told` tells it; but not when its migrations ran, which file it is, nor what is only half typed. */
export function ledgerContents(file: string, told: (table: string, row: Row) => Row = (_, row) => row) {
  const db = new Database(file, { readonly: true })
  const tables = db
    .prepare<[], { name: string }>(
      "SELECT name FROM pragma_table_list WHERE type = 'table' AND schema = 'main' AND name NOT LIKE 'sqlite_%' AND name NOT IN ('applied_migrations', 'ledger_identity', 'drafts')",
    )
    .all()
  const digests = tables.map(({ name }) => {
    const rows = db
      .prepare<[], Row>(`SELECT * FROM "${name}" ORDER BY 1`)
      .all()
      .map(row => told(name, row))
    return [name, rows.length, createHash('sha256').update(JSON.stringify(rows)).digest('hex')] as const
  })
  db.close()
  return digests.sort((a, b) => a[0].localeCompare(b[0]))
}
