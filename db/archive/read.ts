import { existsSync, renameSync, rmSync } from 'node:fs'
import { sql } from 'drizzle-orm'
import { hashOf, writeBeside } from '../file/files-beside.ts'
import { type Ledger, type OpenOptions, openLedger, type Write } from '../file/ledger.ts'
import { migrationsIn } from '../file/migrations.ts'
import { photographPath } from '../file/photograph-files.ts'
import { keptPaperPath } from '../rows/kept-papers.ts'
import { ArchiveRefused, type FileLine, type Progress, type RowLine } from './format.ts'
import { checkedHead, contentLines } from './lines.ts'

const rowsAtOnce = 500

/** Puts rows of one table in, as one JSON text that SQLite lays out; only columns that the table has, for their names become part of the statement. */
function putIn(tx: Write, table: string, rows: readonly RowLine['row'][]): void {
  const columns = Object.keys(rows[0] ?? {})
  const known = tx
    .all<{ name: string }>(sql`SELECT name FROM pragma_table_info(${table})`)
    .map(({ name }) => name)
  if (columns.length === 0 || columns.some(name => !known.includes(name)))
    throw new ArchiveRefused('archive.unfit')
  const names = sql.join(
    columns.map(name => sql.identifier(name)),
    sql`, `,
  )
  const values = sql.join(
    columns.map(name => sql`value ->> ${name}`),
    sql`, `,
  )
  tx.run(
    sql`INSERT ${replacing(table)} INTO ${sql.identifier(table)} (${names}) SELECT ${values} FROM json_each(${JSON.stringify(rows)})`,
  )
}

/** A new file has an identity already: the archive's own takes its place, for it is the same ledger. */
const replacing = (table: string) => sql.raw(table === 'ledger_identity' ? 'OR REPLACE' : '')

/** Rows of one table that follow each other, as many as go into one statement. */
function* batches(lines: Iterable<RowLine>): Generator<{ table: string; rows: RowLine['row'][] }> {
  let batch: { table: string; rows: RowLine['row'][] } | undefined
  for (const { table, row } of lines) {
    if (batch && (batch.table !== table || batch.rows.length === rowsAtOnce)) {
      yield batch
      batch = undefined
    }
    batch ??= { table, rows: [] }
    batch.rows.push(row)
  }
  if (batch) yield batch
}

/** Puts a file beside the ledger `file`, once its bytes are those its name says. */
function keepFile(file: string, line: FileLine): void {
  if (line.bytes === null) return
  const bytes = Buffer.from(line.bytes, 'base64')
  const hash = 'paper' in line ? line.paper : line.photograph
  if (hashOf(bytes) !== hash) throw new ArchiveRefused('archive.damaged')
  const path =
    'paper' in line ? keptPaperPath(file, hash) : photographPath(file, { hash, mediaType: line.mediaType })
  writeBeside(path, bytes)
}

/** The rows of the archive; its photographs and papers are put beside `file` on the way. */
function* rowsKeepingFiles(archive: string, file: string): Generator<RowLine> {
  for (const line of contentLines(archive))
    if ('table' in line) yield line
    else if ('bytes' in line) keepFile(file, line)
}

/**
 * Puts everything in. Rows come in the order of their tables' names, before what they refer to: references are checked once, at the
 * end, for SQLite looks through a whole table at each row while some are open.
 */
function fill(ledger: Ledger, archive: string, file: string, progress: Progress): void {
  ledger.write(tx => {
    let last = { table: '', done: 0 }
    for (const { table, rows } of batches(rowsKeepingFiles(archive, file))) {
      putIn(tx, table, rows)
      if (last.table !== '' && last.table !== table) progress(last.table, last.done)
      last = { table, done: (last.table === table ? last.done : 0) + rows.length }
    }
    if (last.table !== '') progress(last.table, last.done)
    if (tx.get(sql`PRAGMA foreign_key_check`)) throw new ArchiveRefused('archive.unfit')
  })
}

/** What SQLite says of rows that do not fit, as a refusal. */
const asRefusal = (error: unknown): unknown =>
  String((error as { code?: unknown } | null)?.code).startsWith('SQLITE_CONSTRAINT')
    ? new ArchiveRefused('archive.unfit')
    : error

/**
 * Makes the ledger `file` of an archive, with its photographs and papers beside it, in the shape it was written in, and then brings it up
 * to date. The whole archive is checked first and nothing is left of a ledger that could not be filled. Throws
 * ArchiveRefused, also where there is a file of that name already.
 */
export function readArchive(archive: string, file: string, options: OpenOptions, progress: Progress): void {
  if (existsSync(file) || existsSync(`${file}-wal`)) throw new ArchiveRefused('archive.there')
  const { shape } = checkedHead(archive)
  if (shape > migrationsIn(options.migrations).length) throw new ArchiveRefused('archive.newer')
  const unfinished = `${file}.unfinished`
  const remove = () => {
    for (const ending of ['', '-wal']) rmSync(`${unfinished}${ending}`, { force: true })
  }
  remove()
  const ledger = openLedger(unfinished, { ...options, upTo: shape, referencesLater: true, passing: true })
  try {
    fill(ledger, archive, file, progress)
    ledger.close()
    renameSync(unfinished, file)
  } catch (error) {
    ledger.close()
    remove()
    throw asRefusal(error)
  }
  openLedger(file, options).close()
}
