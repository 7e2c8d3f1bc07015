import { statSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import type { TaxDue } from '../../core/tax/due.ts'
import { type Ledger, openLedger, type Read } from '../../db/file/ledger.ts'
import { marksQuery, mostFound, wordsQuery } from '../../db/read/find.ts'
import { taxView } from '../../db/read/tax.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { at, rounded } from './measure.ts'
import { keptLedger } from './twenty-years.ts'

const migrations = join(import.meta.dirname, '../../migrations')
const now = () => '2027-01-04T09:00:00.000Z'

/** A ledger of the bench behind the handler that serves it. */
interface Served {
  readonly file: string
  readonly ledger: Ledger
  readonly repairs: number
  /** Asks for a page as the browser does; throws where it is refused. */
  get(path: string): Promise<void>
}

async function served(share: number): Promise<Served> {
  const file = await keptLedger(share)
  const ledger = openLedger(file, { migrations, now, random })
  const handle = createHandler({ ledger, now, pages: '.', played: true })
  const get = async (path: string) => {
    const response = await handle(new Request(`http://ledger${path}`))
    const text = await response.text()
    if (!response.ok) throw new Error(`${path}: ${text}`)
  }
  return { file, ledger, repairs: Math.round(40_000 * share), get }
}

type Once<On> = (on: On, n: number) => unknown

const warmUps = 20

/** The times in milliseconds of `runs` turns with each of `all`, taken in turn so that whatever else the machine does meets them alike. */
async function inTurn<On>(all: readonly On[], runs: number, once: Once<On>): Promise<number[][]> {
  const times: number[][] = all.map(() => [])
  for (let n = -warmUps; n < runs; n++)
    for (const [which, on] of all.entries()) {
      const from = performance.now()
      await once(on, Math.abs(n))
      if (n >= 0) times[which]?.push(performance.now() - from)
    }
  return times
}

/** The 95th percentile on the whole ledger and on a tenth of it, and how the one stands to the other. */
async function compared(
  both: readonly [Served, Served],
  runs: number,
  ceilingMs: number,
  once: Once<Served>,
) {
  const [whole = [], tenth = []] = await inTurn(both, runs, once)
  const [p95Ms, tenthP95Ms] = [at(whole, 0.95), at(tenth, 0.95)]
  const ratio = p95Ms / tenthP95Ms
  return {
    medianMs: rounded(at(whole, 0.5)),
    p95Ms: rounded(p95Ms),
    tenthP95Ms: rounded(tenthP95Ms),
    ratio: rounded(ratio),
    kept: p95Ms <= ceilingMs && ratio <= 1.3,
  }
}

const typed = [
  'pel',
  'ros',
  'quay',
  'okafor l',
  'nunez',
  'ollerensh',
  '0714',
  'OL-10',
  'tarn',
  'wick 4',
  '3999',
  'bracket',
]
const typedAt = (n: number): string => typed[n % typed.length] ?? ''

/** What find asks of its two indexes, bare: the yardstick. */
function bareFind(db: Database.Database): (text: string) => void {
  const prepared = (index: string) =>
    db.prepare(`SELECT rowid FROM ${index} WHERE ${index} MATCH ? ORDER BY rowid DESC LIMIT ${mostFound}`)
  const [words, marks] = [prepared('find_words'), prepared('find_marks')]
  return text => {
    const asked = [
      [words, wordsQuery(text)],
      [marks, marksQuery(text)],
    ] as const
    for (const [statement, query] of asked) if (query) statement.all(query)
  }
}

/** Find through the handler beside the same queries run bare in the same process (target: at most twice as long). */
async function finding(whole: Served) {
  // The bare queries need a connection of their own, and a ledger has one owner: they run after it is closed.
  const runs = typed.length * 25
  const [found = []] = await inTurn([whole], runs, ({ get }, n) =>
    get(`/api/find?q=${encodeURIComponent(typedAt(n))}`),
  )
  whole.ledger.close()
  const db = new Database(whole.file, { readonly: true })
  const bare = bareFind(db)
  const [alone = []] = await inTurn([bare], runs, (ask, n) => ask(typedAt(n)))
  db.close()
  const [p95Ms, bareP95Ms] = [at(found, 0.95), at(alone, 0.95)]
  const ratio = p95Ms / bareP95Ms
  return {
    medianMs: rounded(at(found, 0.5)),
    p95Ms: rounded(p95Ms),
    bareP95Ms: rounded(bareP95Ms),
    ratio: rounded(ratio),
    kept: ratio <= 2,
  }
}

const everyYear = ['2000-01-01', '2099-12-31'] as const

/** Tax of a quarter and of all years at once, with the invoice and with the payment (target: all years at most 300 ms). */
async function taxOf(read: Read) {
  const of = async (from: string, to: string, due: TaxDue) => {
    const [times = []] = await inTurn([read], 20, on => taxView(on, from, to, due))
    return rounded(at(times, 0.95))
  }
  const [allOnPayments, allOnInvoices] = [
    await of(...everyYear, 'payment'),
    await of(...everyYear, 'invoice'),
  ]
  return {
    quarterOnPayments: await of('2026-07-01', '2026-09-30', 'payment'),
    allOnPayments,
    allOnInvoices,
    kept: Math.max(allOnPayments, allOnInvoices) <= 300,
  }
}

const pages = ['counter', 'bench', 'shelf', 'documents', 'owed', 'owners', 'stores', 'shop', 'dayBook']
const year = 'from=2026-01-01&to=2026-12-31'

async function pageTimes(both: readonly [Served, Served]) {
  const times: Record<string, object> = {}
  for (const page of pages)
    times[page] = await compared(both, 200, 15, ({ get }) => get(`/api/pages/${page}`))
  return times
}

const over = async ({ get }: Served, path: string) => {
  const [times = []] = await inTurn([path], 20, get)
  return rounded(at(times, 0.95))
}

/** Find, a repair, and the first rows of every page on twenty years of ledger and on a tenth of them (the files are kept for the next run). */
export async function ledger() {
  const whole = await served(1)
  const tenth = await served(0.1)
  const both = [whole, tenth] as const
  const result = {
    fileMb: Math.round(statSync(whole.file).size / 1e6),
    repair: await compared(both, 400, 10, ({ get, repairs }, n) =>
      get(`/api/pages/repairs/${1 + ((n * 7919) % repairs)}`),
    ),
    pages: await pageTimes(both),
    taxMs: await taxOf(whole.ledger.read),
    accountYearMs: await over(whole, `/api/pages/account?name=owed&${year}`),
    figuresYearMs: await over(whole, `/api/pages/figures?${year}`),
    find: await finding(whole),
  }
  tenth.ledger.close()
  return result
}
