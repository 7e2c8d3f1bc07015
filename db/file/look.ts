import type Database from 'better-sqlite3'
import { type MediaType, mediaTypes } from '../../core/photograph/picture.ts'
import type { KeptBeside } from './files-beside.ts'
import { type Head, readHead, type Tail } from './head.ts'
import { identityIn } from './identity.ts'
import { judge } from './judge.ts'
import { LedgerRefused } from './ledger-refused.ts'
import { tailOf } from './missing.ts'

/** A file that stands beside a ledger, in its folder. */
export interface NeededFile {
  readonly what: KeptBeside
  readonly hash: string
  readonly ending: string
}

/** What stands in a ledger's file, at a glance. */
export interface Contents {
  /** Null where the file is of a shape that had none. */
  readonly identity: string | null
  readonly tail: Tail
  /** The name of the last act, such as `counter.takeIn`; null where nothing was entered. */
  readonly lastAct: string | null
  readonly owners: number
  readonly clocks: number
  readonly repairs: number
  readonly papers: number
  /** The photographs and drawn papers that belong beside it. */
  readonly files: readonly NeededFile[]
}

const has = (db: Database.Database, table: string) =>
  db.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?").get(table) !== undefined

const countOf = (db: Database.Database, table: string): number =>
  db.prepare<[], { n: number }>(`SELECT count(*) AS n FROM ${table}`).get()?.n ?? 0

function filesIn(db: Database.Database): NeededFile[] {
  const hashes = (table: string) =>
    has(db, table) ? db.prepare<[], { hash: string }>(`SELECT hash FROM ${table}`).all() : []
  const papers = [...hashes('kept_papers'), ...hashes('kept_handed_papers')]
  const photographs = db
    .prepare<[], { hash: string; type: MediaType }>('SELECT hash, media_type AS type FROM photographs')
    .all()
  return [
    ...papers.map(({ hash }) => ({ what: 'papers' as const, hash, ending: 'pdf' })),
    ...photographs.map(({ hash, type }) => ({
      what: 'photographs' as const,
      hash,
      ending: mediaTypes[type],
    })),
  ]
}

/** What stands in an open file of any shape. */
export const contentsOf = (db: Database.Database): Contents => ({
  identity: identityIn(db)?.identity ?? null,
  tail: tailOf(db),
  lastAct:
    db.prepare<[], { act: string }>('SELECT act FROM day_book ORDER BY id DESC LIMIT 1').get()?.act ?? null,
  owners: countOf(db, 'owners'),
  clocks: countOf(db, 'clocks'),
  repairs: countOf(db, 'repairs'),
  papers: countOf(db, 'documents'),
  files: filesIn(db),
})

/** Looks into a ledger's file, a copy of one or a backup, without a change to it. Throws LedgerRefused where it is no sound one. */
export function lookInto(file: string): Contents {
  let contents: Contents | undefined
  const kind = judge(file, readHead(file), db => {
    contents = contentsOf(db)
  })
  if (kind === 'new' || !contents) throw new LedgerRefused('ledger.foreign')
  return contents
}

/** How far a ledger is known to have come, by itself where it can be read, else by what is known beside it; null where neither is. */
export function knownTail(file: string): (Tail & { readonly identity: string | null }) | null {
  const head: Head | undefined = readHead(file)
  try {
    const { tail, identity } = lookInto(file)
    return head && head.count > tail.count ? head : { ...tail, identity }
  } catch {
    return head ?? null
  }
}
