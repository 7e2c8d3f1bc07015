import type Database from 'better-sqlite3'

type Statement = Database.Statement<unknown[], unknown>

/** What the query builder asks of a statement: rows as objects, or through `raw` as lists. */
type Kept = Pick<Statement, 'run' | 'all' | 'get' | 'raw'>

/** The most statements kept; the least lately used one makes room. The ledger's own are some hundreds. */
const most = 1000

/** A statement prepared once for rows as objects and once for rows as lists, so that neither use disturbs the other. */
function keptStatement(prepare: () => Statement): Kept {
  const objects = prepare()
  let lists: Statement | undefined
  return {
    run: (...values) => objects.run(...values),
    all: (...values) => objects.all(...values),
    get: (...values) => objects.get(...values),
    raw: () => {
      lists ??= prepare().raw()
      return lists
    },
  }
}

/**
 * Keeps what the connection prepares, by its SQL: a page asks the same few questions over and over, and preparing them costs more
 * than answering them.
 */
export function keepPrepared(db: Database.Database): void {
  const kept = new Map<string, Kept>()
  const prepare = db.prepare.bind(db) as (sql: string) => Statement
  const statement = (sql: string): Kept => {
    const found = kept.get(sql) ?? keptStatement(() => prepare(sql))
    kept.delete(sql)
    kept.set(sql, found)
    if (kept.size > most) kept.delete(kept.keys().next().value ?? '')
    return found
  }
  db.prepare = statement as typeof db.prepare
}
