import { createHash } from 'node:crypto'
import { asc, gt, sql } from 'drizzle-orm'
import { foundBeside, type KeptBeside } from '../file/files-beside.ts'
import type { Read } from '../file/ledger.ts'
import { type PhotographFile, photographPath } from '../file/photograph-files.ts'
import { byId } from '../rows/by-id.ts'
import { allKeptPapers, type KeptPaper, keptPaperPath } from '../rows/kept-papers.ts'
import { photographs } from '../schema/index.ts'
import type { End, FileLine, Line, PaperLine, PhotographLine, Progress, RowLine, Value } from './format.ts'

interface TableListed {
  readonly name: string
  /** 1 where the table has no row ids. */
  readonly wr: 0 | 1
}

/** Every table of a ledger; what is built from them (the find indexes) and the record of migrations left out. */
const tablesOf = (read: Read) =>
  read.all<TableListed>(sql`
    SELECT name, wr FROM pragma_table_list
    WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> 'applied_migrations'
    ORDER BY name`)

/** Each page is a statement of its own, whose memory outside the heap is given back late: not too many of them. */
const rowsAtOnce = 2000

type Row = Readonly<Record<string, Value>>

function rowsOf(read: Read, { name, wr }: TableListed): Iterable<Row> {
  const from = sql`SELECT * FROM ${sql.identifier(name)}`
  if (wr === 1) return read.all<Row>(from)
  return byId(
    (after, limit) =>
      read.all<Row & { id: number }>(sql`${from} WHERE id > ${after} ORDER BY id LIMIT ${limit}`),
    rowsAtOnce,
  )
}

/** A row as it is archived: which opening a file was opened by is of that file alone. */
const archived = (table: string, row: RowLine['row']): RowLine['row'] =>
  table === 'ledger_identity' ? { ...row, opening: '0'.repeat(32) } : row

function* rowLines(read: Read, progress: Progress): Generator<RowLine> {
  for (const table of tablesOf(read)) {
    let done = 0
    for (const row of rowsOf(read, table)) {
      yield { table: table.name, row: archived(table.name, row) }
      done += 1
      if (done % 100_000 === 0) progress(table.name, done)
    }
    progress(table.name, done)
  }
}

/** The bytes as base64; a file that is missing or not as it was kept is left out, so that the archive can be read back. */
function base64(path: string, hash: string): string | null {
  const found = foundBeside(path, hash)
  return found.state === 'kept' ? Buffer.from(found.bytes).toString('base64') : null
}

const photographRows = (read: Read) =>
  byId((after, limit) =>
    read
      .select()
      .from(photographs)
      .where(gt(photographs.id, after))
      .orderBy(asc(photographs.id))
      .limit(limit)
      .all(),
  )

/** The files of one kind, a line each. */
function* fileLines<R>(
  what: KeptBeside,
  rows: Iterable<R>,
  line: (row: R) => FileLine,
  progress: Progress,
): Generator<FileLine> {
  let done = 0
  for (const row of rows) {
    yield line(row)
    done += 1
    if (done % 1000 === 0) progress(`${what} beside it`, done)
  }
  progress(`${what} beside it`, done)
}

const photographLine = (file: string, row: PhotographFile): PhotographLine => ({
  photograph: row.hash,
  mediaType: row.mediaType,
  bytes: base64(photographPath(file, row), row.hash),
})

const paperLine = (file: string, { hash }: KeptPaper): PaperLine => ({
  paper: hash,
  bytes: base64(keptPaperPath(file, hash), hash),
})

function* allLines(read: Read, file: string, progress: Progress): Generator<Line> {
  const shape = read.get<{ shape: number }>(sql`SELECT user_version AS shape FROM pragma_user_version`)
  yield { countwheel: 'archive', version: 1, shape: shape?.shape ?? 0 }
  yield* rowLines(read, progress)
  yield* fileLines('photographs', photographRows(read), row => photographLine(file, row), progress)
  yield* fileLines('papers', allKeptPapers(read), row => paperLine(file, row), progress)
}

/**
 * The ledger, its photographs and its papers as the lines of an archive, a page at a time. `file` is the ledger's own file,
 * beside which they stand. Returns the hashes of those that are not there as they were kept.
 */
export function* archiveLines(read: Read, file: string, progress: Progress): Generator<string, string[]> {
  const hash = createHash('sha256')
  const missing: string[] = []
  let count = 0
  for (const line of allLines(read, file, progress)) {
    if ('bytes' in line && line.bytes === null) missing.push('paper' in line ? line.paper : line.photograph)
    const text = `${JSON.stringify(line)}\n`
    hash.update(text)
    count += 1
    yield text
  }
  yield `${JSON.stringify({ end: count, sha256: hash.digest('hex') } satisfies End)}\n`
  return missing
}
