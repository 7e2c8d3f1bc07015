import { existsSync, renameSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import type { TaxDue } from '../../core/tax/due.ts'
import { openLedger, type Read } from '../../db/ledger.ts'
import { taxView } from '../../db/read/tax.ts'
import { createHandler } from '../../electron/handler.ts'
import { twentyYears } from './twenty-years.ts'

const migrations = join(import.meta.dirname, '../../migrations')
const now = () => '2027-01-04T09:00:00.000Z'

const p95 = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length * 0.95)] ?? Number.NaN

/** The 95th percentile of `runs` timings in milliseconds, after a few to warm up. */
async function p95Of(runs: number, once: (n: number) => unknown): Promise<number> {
  const times: number[] = []
  for (let n = -10; n < runs; n++) {
    const from = performance.now()
    await once(n < 0 ? -n : n)
    if (n >= 0) times.push(performance.now() - from)
  }
  return p95(times)
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

/** The same prepared FTS query bare: the yardstick of find. */
async function bareFind(file: string): Promise<number> {
  const db = new Database(file, { readonly: true })
  const words = db.prepare(
    'SELECT rowid FROM find_words WHERE find_words MATCH ? ORDER BY rowid DESC LIMIT 20',
  )
  const result = await p95Of(300, n => words.all(`"${typed[n % typed.length]?.split(/[ -]/)[0]}"*`))
  db.close()
  return result
}

const everyYear = ['2000-01-01', '2099-12-31'] as const

/** Tax of a quarter and of all years at once, with the invoice and with the payment (target: all years at most 300 ms). */
async function taxOf(read: Read) {
  const of = (from: string, to: string, due: TaxDue) => p95Of(20, () => taxView(read, from, to, due))
  return {
    quarterOnPayments: await of('2026-07-01', '2026-09-30', 'payment'),
    allOnPayments: await of(...everyYear, 'payment'),
    allOnInvoices: await of(...everyYear, 'invoice'),
  }
}

async function measured(file: string, share: number) {
  if (!existsSync(file)) {
    await twentyYears(`${file}.part`, share)
    renameSync(`${file}.part`, file)
  }
  const from = performance.now()
  const ledger = openLedger(file, { migrations, now })
  const openMs = performance.now() - from
  const handle = createHandler({ ledger, now, pages: '.' })
  const get = async (path: string) => {
    const response = await handle(new Request(`http://ledger${path}`))
    const text = await response.text()
    if (!response.ok) throw new Error(`${path}: ${text}`)
  }
  const repairs = Math.round(40_000 * share)
  const pages = ['counter', 'bench', 'shelf', 'documents', 'owed', 'owners', 'stores', 'shop', 'dayBook']
  const pageMs: Record<string, number> = {}
  for (const page of pages) pageMs[page] = await p95Of(40, () => get(`/api/pages/${page}`))
  const result = {
    fileMb: Math.round(statSync(file).size / 1e6),
    openMs,
    findMs: await p95Of(300, n => get(`/api/find?q=${encodeURIComponent(typed[n % typed.length] ?? '')}`)),
    repairMs: await p95Of(200, n => get(`/api/pages/repairs/${1 + ((n * 7919) % repairs)}`)),
    pageMs,
    taxMs: await taxOf(ledger.read),
    accountYearMs: await p95Of(20, () => get('/api/pages/account?name=owed&from=2026-01-01&to=2026-12-31')),
    figuresYearMs: await p95Of(20, () => get('/api/pages/figures?from=2026-01-01&to=2026-12-31')),
  }
  ledger.close()
  return { ...result, bareFindMs: await bareFind(file) }
}

/** Find, a repair, and the first rows of every page on twenty years of ledger and on a tenth of them (files are kept in the temporary folder for the next run). */
export async function ledger() {
  const whole = await measured(join(tmpdir(), 'countwheel-bench-1.countwheel'), 1)
  const tenth = await measured(join(tmpdir(), 'countwheel-bench-0.1.countwheel'), 0.1)
  return {
    whole,
    tenth,
    findRatio: whole.findMs / whole.bareFindMs,
    repairRatio: whole.repairMs / tenth.repairMs,
  }
}
