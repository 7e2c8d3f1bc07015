import { createHash } from 'node:crypto'
import { existsSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { openLedger } from '../../db/file/ledger.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { testSettings } from '../electron/handler-fixture.ts'

/** The shop of twenty years (quality targets): 25,000 owners, 32,000 clocks, 40,000 repairs, 1,200,000 readings. */
const full = { owners: 25_000, clocks: 32_000, repairs: 40_000, readingsPerRepair: 30, inShop: 160 }

const migrations = join(import.meta.dirname, '../../migrations')
const families = [
  'Pell',
  'Okafor-Lind',
  'Quillfeather',
  'Hallam',
  'Brandeis',
  'Núñez',
  'Öström',
  'Marrow',
  'Tansley',
  'Wick',
]
const givens = ['Rosamund', 'Tobias', 'Dot', 'Wil', 'Żaneta', 'Ines', 'Osric', 'Petra', 'Lemuel', 'Agnes']
const streets = ['Quay Street', 'Weir Lane', 'Tollgate', 'Mill Bank', 'Abbot’s Row']
const makers = ['J. Ollerenshaw', 'Tarn & Daughter', 'Vell Frères', 'P. Hask', 'Lindqvist-Moor']
const forms = ['bracket', 'mantel', 'wall', 'longcase', 'cuckoo', 'carriage']

const pick = <T>(list: readonly T[], n: number): T => list[n % list.length] as T
const dayMs = 86_400_000
const stagesInShop = ['taken-in', 'estimate-out', 'on-the-bench', 'running-in', 'ready'] as const
const start = Date.UTC(2007, 0, 2, 9)
const instant = (ms: number): string => new Date(ms).toISOString()
const digest = (text: string): string => createHash('sha256').update(text).digest('hex')

/** Inserts `count` rows made by `row` into `table`, by column name. */
function insert(
  db: Database.Database,
  table: string,
  count: number,
  row: (n: number) => Record<string, unknown>,
): void {
  const columns = Object.keys(row(0))
  const put = db.prepare(
    `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map(c => `@${c}`).join(', ')})`,
  )
  for (let n = 0; n < count; n++) put.run(row(n))
}

function people(db: Database.Database, owners: number, clocks: number): void {
  insert(db, 'owners', owners, n => ({
    id: n + 1,
    name: `${pick(givens, n)} ${pick(families, Math.floor(n / 10))} ${n}`,
    address: `${(n % 200) + 1} ${pick(streets, n)}`,
    since_at: instant(start + n * 1000),
  }))
  insert(db, 'owner_contacts', owners, n => ({
    owner_id: n + 1,
    kind: 'phone',
    value: `+44207${String(1_000_000 + n * 7)}`,
  }))
  insert(db, 'clocks', clocks, n => ({
    id: n + 1,
    form: pick(forms, n),
    maker: pick(makers, n),
    serial: `${pick(['OL', 'TD', 'VF'], n)}-${10_000 + n}`,
    trains: (n % 3) + 1,
    power: 'spring',
    duration: '8-day',
  }))
  insert(db, 'clock_owners', clocks, n => ({
    clock_id: n + 1,
    owner_id: (n % owners) + 1,
    from_at: instant(start + n * 1000),
  }))
}

function repairs(db: Database.Database, count: number, clocks: number, owners: number, inShop: number): void {
  const stepMs = (20 * 365 * dayMs) / Math.max(count, 1)
  insert(db, 'repairs', count, n => {
    const takenIn = instant(start + n * stepMs)
    return {
      id: n + 1,
      number: n + 1,
      clock_id: (n % clocks) + 1,
      owner_id: ((n % clocks) % owners) + 1,
      taken_in_at: takenIn,
      fault: 'Stops in the night; the strike runs on.',
      scope: 'service',
      stage: n >= count - inShop ? pick(stagesInShop, n) : 'collected',
      stage_since: takenIn,
      ready_at: n >= count - inShop ? null : instant(start + n * stepMs + 20 * dayMs),
      estimated_on: takenIn.slice(0, 10),
    }
  })
  insert(db, 'hand_overs', count - inShop, n => ({
    repair_id: n + 1,
    at: instant(start + n * stepMs + 24 * dayMs),
    to_name: 'The owner',
  }))
  insert(db, 'belongings', count * 2, n => ({
    repair_id: Math.floor(n / 2) + 1,
    item: pick(['key', 'pendulum'], n),
    count: 1,
    custody: 'received',
  }))
  insert(db, 'condition_notes', count * 2, n => ({
    repair_id: Math.floor(n / 2) + 1,
    component: pick(['dial', 'case'], n),
    grade: 'worn',
    noted_at: instant(start + Math.floor(n / 2) * stepMs),
  }))
  insert(db, 'labour_entries', count * 3, n => {
    const from = start + Math.floor(n / 3) * stepMs + (n % 3) * dayMs
    return {
      repair_id: Math.floor(n / 3) + 1,
      task: pick(['strip', 'clean', 'assemble'], n),
      started_at: instant(from),
      ended_at: instant(from + 5_400_000),
    }
  })
}

const lines = [
  { kind: 'labour', description: 'Overhaul of three trains', quantity: '7.5', unit: '48.00', net: 36_000 },
  { kind: 'part', description: 'Mainspring', quantity: '1', unit: '36.40', net: 3_640 },
].map(line => ({ ...line, taxes: [{ code: 'VAT', rate: '20' }], working: [] }))

/** What the views read of a frozen paper. */
const contentsOf = (kind: string): string =>
  JSON.stringify(
    kind === 'invoice' ? { kind, lines } : kind === 'claim-check' ? { kind, estimate: {} } : { kind },
  )

function papers(db: Database.Database, count: number, owners: number, clocks: number): void {
  const stepMs = (20 * 365 * dayMs) / Math.max(count, 1)
  const kinds = ['claim-check', 'estimate', 'invoice', 'receipt', 'warranty']
  insert(db, 'documents', count * kinds.length, n => {
    const repair = Math.floor(n / kinds.length)
    const kind = pick(kinds, n)
    const at = instant(start + repair * stepMs)
    const number =
      kind === 'claim-check'
        ? `${repair + 1}`
        : kind === 'estimate'
          ? `${repair + 1}/1`
          : `${kind[0]?.toUpperCase()}${repair + 1}`
    return {
      id: n + 1,
      kind,
      number,
      sequence: repair + 1,
      issued_at: at,
      issued_on: at.slice(0, 10),
      owner_id: ((repair % clocks) % owners) + 1,
      repair_id: repair + 1,
      currency: 'GBP',
      total_minor: kind === 'invoice' ? 47_568 : 0,
      tax_minor: kind === 'invoice' ? 7_928 : 0,
      contents: contentsOf(kind),
      contents_hash: digest(number),
    }
  })
  insert(db, 'kept_papers', count * kinds.length, n => ({
    id: n + 1,
    hash: digest(`paper ${n}`),
    bytes: 30_000,
    size: 'a4',
    drawn_by: '0.1.0',
  }))
  const invoice = (repair: number) => repair * kinds.length + 3
  insert(db, 'document_taxes', count, n => ({
    document_id: invoice(n),
    code: 'VAT',
    rate: '20',
    kind: 'labour',
    taxable_minor: 39_640,
    tax_minor: 7_928,
  }))
  insert(db, 'payments', count, n => {
    const at = instant(start + n * stepMs)
    return {
      at,
      on_date: at.slice(0, 10),
      owner_id: ((n % clocks) % owners) + 1,
      repair_id: n + 1,
      invoice_id: invoice(n),
      method: 'card',
      amount_minor: 47_568,
    }
  })
  // What core/tax derives of them: each invoice is paid whole on its own day.
  db.exec(`
    INSERT INTO settled_taxes (repair_id, on_date, code, rate, kind, taxable_minor, tax_minor)
      SELECT p.repair_id, p.on_date, t.code, t.rate, t.kind, t.taxable_minor, t.tax_minor
      FROM payments p JOIN document_taxes t ON t.document_id = p.invoice_id ORDER BY p.id`)
  insert(db, 'estimates', count, n => ({
    repair_id: n + 1,
    version: 1,
    written_at: instant(start + n * stepMs),
    tax: '{"basis":"group","mode":"half-up","inclusive":false}',
    total_minor: 47_568,
    sent_at: instant(start + n * stepMs),
    document_id: n * kinds.length + 2,
  }))
  insert(db, 'go_aheads', count, n => ({
    repair_id: n + 1,
    estimate_id: n + 1,
    at: instant(start + n * stepMs + dayMs),
    answer: 'go-ahead',
    who: 'The owner',
    way: 'telephone',
    limit_minor: 47_568,
  }))
  insert(db, 'estimate_lines', count * 2, n => ({
    estimate_id: Math.floor(n / 2) + 1,
    position: n % 2,
    kind: pick(['labour', 'part'], n),
    description: pick(['Overhaul of three trains', 'Mainspring'], n),
    quantity: pick(['7.5', '1'], n),
    unit: pick(['48.00', '36.40'], n),
    taxes: '[{"code":"VAT","rate":"20"}]',
    net_minor: pick([36_000, 3_640], n),
  }))
}

function shelf(db: Database.Database, count: number, readings: number): void {
  const stepMs = (20 * 365 * dayMs) / Math.max(count, 1)
  insert(db, 'run_in_runs', count, n => {
    const from = start + n * stepMs
    const running = n >= count - full.inShop && pick(stagesInShop, n) === 'running-in'
    return {
      id: n + 1,
      repair_id: n + 1,
      started_at: instant(from),
      policy: JSON.stringify(testSettings.runIn['8-day']),
      limit_per_day: '17',
      ready_on: '2027-01-01',
      ended_at: running ? null : instant(from + 14 * dayMs),
      outcome: running ? null : 'passed',
    }
  })
  insert(db, 'readings', count * readings, n => {
    const at = instant(start + Math.floor(n / readings) * stepMs + (n % readings) * (dayMs / 2))
    return {
      run_id: Math.floor(n / readings) + 1,
      at,
      entered_at: at,
      error_ms: (n % readings) * 1500,
      wound: n % 14 === 0 ? 1 : 0,
    }
  })
}

function dayBook(db: Database.Database, count: number): void {
  let previous =
    db.prepare<[], { hash: string }>('SELECT hash FROM day_book ORDER BY id DESC LIMIT 1').get()?.hash ?? ''
  insert(db, 'day_book', count, n => {
    const hash = digest(`${previous}${n}`)
    const row = {
      at: instant(start + n),
      act: 'counter.takeIn',
      subject_kind: 'repair',
      subject_id: (n % 1000) + 1,
      commitment: digest(`${n}`),
      salt: digest(`salt ${n}`),
      input: '{}',
      previous_hash: previous,
      hash,
    }
    previous = hash
    return row
  })
}

/** The find entries of everything, and the indexes built from them in one go. */
function findEntries(db: Database.Database): void {
  db.exec(`
    INSERT INTO find_entries (kind, subject_id, words, marks)
      SELECT 'owner', o.id, o.name || ' ' || o.address, replace(c.value, '+', '') FROM owners o JOIN owner_contacts c ON c.owner_id = o.id;
    INSERT INTO find_entries (kind, subject_id, words, marks) SELECT 'clock', id, maker || ' ' || form || ' ' || serial, replace(serial, '-', '') FROM clocks;
    INSERT INTO find_entries (kind, subject_id, words, marks)
      SELECT 'repair', r.id, r.number || ' ' || o.name || ' ' || c.maker || ' ' || c.form, replace(c.serial, '-', '')
      FROM repairs r JOIN owners o ON o.id = r.owner_id JOIN clocks c ON c.id = r.clock_id;
    INSERT INTO find_entries (kind, subject_id, words, marks)
      SELECT 'paper', id, number, replace(number, '/', '') FROM documents;
    INSERT INTO find_words (find_words) VALUES ('rebuild');
    INSERT INTO find_marks (find_marks) VALUES ('rebuild');
  `)
}

/** What a kept ledger depends on: the shape of the file, and what is written into it. */
const shape = () =>
  digest(
    [join(migrations, 'schema.sql'), import.meta.filename].map(file => readFileSync(file, 'utf8')).join(),
  ).slice(0, 12)

/** A ledger with a share of twenty years, in the temporary folder; made once and kept for the next bench. */
export async function keptLedger(share: number): Promise<string> {
  const file = join(tmpdir(), `countwheel-bench-${shape()}-${share}.countwheel`)
  if (!existsSync(file)) {
    await twentyYears(`${file}.part`, share)
    renameSync(`${file}.part`, file)
  }
  return file
}

/** Fills a new ledger at `file` with a share of twenty years (1 is all of them). Invented names throughout. */
export async function twentyYears(file: string, share: number): Promise<void> {
  for (const ending of ['', '-wal']) rmSync(`${file}${ending}`, { force: true })
  const at = instant(start)
  const ledger = openLedger(file, { migrations, now: () => at, random })
  const handle = createHandler({ ledger, now: () => at, pages: '.', played: true })
  const opened = await handle(
    new Request('http://ledger/api/shop/open', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ settings: testSettings, person: 'Ines Marrow' }),
    }),
  )
  if (!opened.ok) throw new Error(await opened.text())
  ledger.close()
  const of = (n: number) => Math.round(n * share)
  const db = new Database(file)
  db.pragma('synchronous = OFF')
  const triggers = db
    .prepare<[], { name: string; sql: string }>(
      "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = 'find_entries'",
    )
    .all()
  for (const { name } of triggers) db.exec(`DROP TRIGGER ${name}`)
  db.transaction(() => {
    people(db, of(full.owners), of(full.clocks))
    // What stands in the shop does not grow with the years.
    repairs(db, of(full.repairs), of(full.clocks), of(full.owners), full.inShop)
    papers(db, of(full.repairs), of(full.owners), of(full.clocks))
    shelf(db, of(full.repairs), full.readingsPerRepair)
    dayBook(db, of(full.repairs) * 6)
    findEntries(db)
  })()
  for (const { sql } of triggers) db.exec(sql)
  db.exec('ANALYZE')
  db.close()
}
