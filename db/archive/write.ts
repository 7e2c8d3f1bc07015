import { createHash } from 'node:crypto'
import { asc, gt, sql } from 'drizzle-orm'
import { byId } from '../by-id.ts'
import type { Read } from '../ledger.ts'
import { readPhotograph } from '../photograph-files.ts'
import { photographs } from '../schema/index.ts'
import type { End, Line, Progress, RowLine, Value } from './format.ts'

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

function* rowLines(read: Read, progress: Progress): Generator<RowLine> {
  for (const table of tablesOf(read)) {
    let done = 0
    for (const row of rowsOf(read, table)) {
      yield { table: table.name, row }
      done += 1
      if (done % 100_000 === 0) progress(table.name, done)
    }
    progress(table.name, done)
  }
}

function* photographLines(read: Read, file: string, progress: Progress): Generator<Line> {
  const rows = byId((after, limit) =>
    read
      .select()
      .from(photographs)
      .where(gt(photographs.id, after))
      .orderBy(asc(photographs.id))
      .limit(limit)
      .all(),
  )
  let done = 0
  for (const row of rows) {
    const bytes = readPhotograph(file, row)
    const text = bytes ? Buffer.from(bytes).toString('base64') : null
    yield { photograph: row.hash, mediaType: row.mediaType, bytes: text }
    done += 1
    if (done % 100 === 0) progress('photographs beside it', done)
  }
  progress('photographs beside it', done)
}

function* allLines(read: Read, file: string, progress: Progress): Generator<Line> {
  const shape = read.get<{ shape: number }>(sql`SELECT user_version AS shape FROM pragma_user_version`)
  yield { countwheel: 'archive', version: 1, shape: shape?.shape ?? 0 }
  yield* rowLines(read, progress)
  yield* photographLines(read, file, progress)
}

/**
 * The ledger and its photographs as the lines of an archive, a page at a time. `file` is the ledger's own file, beside which
 * the photographs stand. Returns the hashes of those that are not there.
 */
export function* archiveLines(read: Read, file: string, progress: Progress): Generator<string, string[]> {
  const hash = createHash('sha256')
  const missing: string[] = []
  let count = 0
  for (const line of allLines(read, file, progress)) {
    if ('photograph' in line && line.bytes === null) missing.push(line.photograph)
    const text = `${JSON.stringify(line)}\n`
    hash.update(text)
    count += 1
    yield text
  }
  yield `${JSON.stringify({ end: count, sha256: hash.digest('hex') } satisfies End)}\n`
  return missing
}
