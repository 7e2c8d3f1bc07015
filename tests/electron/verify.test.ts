import { execFile } from 'node:child_process'
import { createHash } from 'node:crypto'
import { copyFileSync, cpSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { promisify } from 'node:util'
import Database from 'better-sqlite3'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { verify as words } from '../../core/words/en/verify.ts'
import { commitmentTo, type Link, rowHash } from '../../db/file/chain.ts'
import { folderBeside } from '../../db/file/files-beside.ts'
import { openLedger } from '../../db/file/ledger.ts'
import { LedgerRefused } from '../../db/file/ledger-refused.ts'
import { photographPath } from '../../db/file/photograph-files.ts'
import { openUntouched } from '../../db/file/untouched.ts'
import { keptPaperPath } from '../../db/rows/kept-papers.ts'
import { type Checked, checks, verified } from '../../db/verify/index.ts'
import { demoLedger } from '../../electron/day/demo-shop.ts'
import { random } from '../chance.ts'
import { migrations, now, temporaryFolder } from '../db/temporary-ledger.ts'

const run = promisify(execFile)
const command = join(import.meta.dirname, '../../electron/commands/verify.ts')
const place = temporaryFolder()
const clean = join(place.folder, 'clean.countwheel')
const file = join(place.folder, 'shop.countwheel')
const picture = { hash: '', mediaType: 'image/png' as const, bytes: Buffer.from('any bytes at all') }
const drawn = { hash: '', bytes: Buffer.from('%PDF-1.7 as it was drawn') }
drawn.hash = createHash('sha256').update(drawn.bytes).digest('hex')
picture.hash = createHash('sha256').update(picture.bytes).digest('hex')

beforeAll(async () => {
  const played = join(place.folder, 'played.countwheel')
  const { ledger } = await demoLedger({ file: played, migrations, random })
  ledger.backUp(clean)
  cpSync(folderBeside(played, 'photographs'), folderBeside(file, 'photographs'), { recursive: true })
  ledger.close()
  const db = new Database(clean)
  db.prepare('INSERT INTO photographs (hash, media_type, bytes, added_at) VALUES (?, ?, ?, ?)').run(
    picture.hash,
    picture.mediaType,
    picture.bytes.length,
    now(),
  )
  db.prepare("INSERT INTO kept_papers (id, hash, bytes, size, drawn_by) VALUES (1, ?, ?, 'a4', '0.1.0')").run(
    drawn.hash,
    drawn.bytes.length,
  )
  db.close()
  for (const [path, bytes] of [
    [photographPath(file, picture), picture.bytes],
    [keptPaperPath(file, drawn.hash), drawn.bytes],
  ] as const) {
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, bytes)
  }
}, 120_000)
afterAll(() => place.remove())

/** A fresh copy of the clean ledger, changed by hand past every trigger and check; only then its triggers are put back. */
function damaged(by: (db: Database.Database) => void, { putBack = true } = {}): string {
  copyFileSync(clean, file)
  const db = new Database(file)
  db.pragma('foreign_keys = OFF')
  db.pragma('ignore_check_constraints = ON')
  db.pragma('synchronous = OFF')
  db.exec('BEGIN')
  const triggers = db
    .prepare<[], { name: string; sql: string }>("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
    .all()
  for (const { name } of triggers) db.exec(`DROP TRIGGER ${name}`)
  by(db)
  if (putBack) for (const { sql } of triggers) db.exec(sql)
  db.exec('COMMIT')
  db.close()
  return file
}

function look(at: string): Checked[] {
  const ledger = openUntouched(at, { migrations, now, random })
  try {
    return [...verified({ read: ledger.read, file: at, migrations })]
  } finally {
    ledger.close()
  }
}

const faults = (at: string) => look(at).flatMap(check => check.faults)
const codes = (at: string) => faults(at).map(({ code }) => code)
const sql = (text: string) => (db: Database.Database) => {
  const { changes } = db.prepare(text).run()
  expect(changes, text).toBeGreaterThan(0)
}

it('finds nothing wrong with the demonstration shop’s ledger, and looks at all of it', () => {
  copyFileSync(clean, file)
  const found = look(file)
  expect(found.flatMap(check => check.faults)).toEqual([])
  expect(found.map(({ name }) => name)).toEqual(Object.keys(checks))
  // A ledger is no backup.
  for (const { name, looked } of found.filter(({ name }) => name !== 'copy'))
    expect(looked, name).toBeGreaterThan(0)
})

describe('each kind of damage is found and named', () => {
  it.each([
    ['UPDATE day_book SET at = replace(at, "T0", "T1") WHERE id = 20', 'dayBook.changed', { id: 20 }],
    ['DELETE FROM day_book WHERE id = 41', 'dayBook.gap', { from: 41, to: 41 }],
    ['DELETE FROM day_book WHERE id > 200', 'dayBook.untold', {}],
    ["UPDATE documents SET contents = replace(contents, 'Weir', 'Mill') WHERE id = 3", 'paper.hash', {}],
    ["UPDATE documents SET contents = 'x' WHERE id = 3", 'paper.unreadable', {}],
    [
      "UPDATE handed_papers SET contents = replace(contents, 'Weir', 'Mill') WHERE id = 2",
      'paper.hash',
      { kind: 'hand-over', of: 2201, handedOn: '2027-02-24' },
    ],
    [
      "UPDATE handed_papers SET handed_on = '2027-02-25' WHERE id = 2",
      'paper.column',
      { field: 'issuedOn', kept: '2027-02-25', says: '2027-02-24' },
    ],
    [
      "UPDATE handed_papers SET contents = json_set(contents, '$.priced.taxInclusive', 1) WHERE id = 1",
      'paper.recomputes',
      { kind: 'go-ahead' },
    ],
    [
      "UPDATE documents SET number = 'I0900' WHERE kind = 'invoice' AND sequence = 1",
      'paper.column',
      { field: 'number', kept: 'I0900', says: 'I0001' },
    ],
    [
      "UPDATE documents SET total_minor = total_minor + 1 WHERE kind = 'invoice' AND sequence = 1",
      'paper.total',
      { number: 'I0001' },
    ],
    [
      "UPDATE documents SET tax_minor = tax_minor - 1 WHERE kind = 'invoice' AND sequence = 1",
      'paper.tax',
      { number: 'I0001' },
    ],
    ['UPDATE document_taxes SET taxable_minor = taxable_minor + 1 WHERE id = 1', 'paper.taxes', {}],
    ['DELETE FROM document_taxes WHERE id = 1', 'paper.taxes', {}],
    [
      "UPDATE documents SET sequence = 1 WHERE kind = 'receipt' AND sequence = 2",
      'number.double',
      { series: 'receipt', number: 1 },
    ],
    ["UPDATE series SET last = last + 3 WHERE name = 'invoice'", 'number.last', { series: 'invoice' }],
    [
      'UPDATE repairs SET number = 2299 WHERE number = 2203',
      'number.gap',
      { series: 'repair', from: 2203, to: 2203 },
    ],
    ['UPDATE estimates SET version = 4 WHERE id = 1', 'number.gap', { from: 1, to: 3 }],
    ['UPDATE estimates SET document_id = NULL WHERE lead_id IS NOT NULL', 'estimate.together', {}],
    [
      "UPDATE repairs SET stage = 'running-in' WHERE id = 1",
      'derived.stage',
      { number: 2201, kept: 'running-in' },
    ],
    ['UPDATE repairs SET due_minor = due_minor + 5 WHERE id = 2', 'derived.due', { number: 2202 }],
    ['UPDATE parts SET in_stock = in_stock + 1 WHERE id = 1', 'derived.stock', {}],
    [
      'UPDATE clock_owners SET owner_id = 9999 WHERE id = 1',
      'file.reference',
      { table: 'clock_owners', parent: 'owners' },
    ],
    ['UPDATE photographs SET bytes = 4', 'photograph.length', { found: picture.bytes.length, kept: 4 }],
    ['UPDATE kept_papers SET bytes = 4', 'keptPaper.length', { found: drawn.bytes.length, kept: 4 }],
  ] as const)('“%s” is found and named', (text, code, values) => {
    const found = faults(damaged(sql(text.replaceAll('"', "'"))))
    expect(found).toContainEqual(expect.objectContaining({ code, values: expect.objectContaining(values) }))
    const one = found.find(fault => fault.code === code)
    expect(words.faults[code](one?.values ?? {})).toMatch(/^[A-Z][^{}]*\.$/)
  })

  it('an invoice whose lines, hash and columns were all made to fit no longer prices to its own figures', () => {
    damaged(db => {
      const row = db
        .prepare<[], { id: number; contents: string }>(
          "SELECT id, contents FROM documents WHERE kind = 'invoice'",
        )
        .get()
      const contents = JSON.parse(row?.contents ?? '')
      contents.priced.taxInclusive += 100
      const text = JSON.stringify(contents)
      db.prepare(
        'UPDATE documents SET contents = ?, contents_hash = ?, total_minor = total_minor + 100 WHERE id = ?',
      ).run(text, createHash('sha256').update(text).digest('hex'), row?.id)
    })
    const found = codes(file)
    expect(found).toContain('paper.recomputes')
    expect(found).not.toContain('paper.hash')
  })

  it('a day-book row written anew with a fitting hash breaks the chain at the row after it', () => {
    damaged(db => {
      const row = db
        .prepare<[], Link & { salt: string }>(
          `SELECT at, person_id AS personId, act, version, key, subject_kind AS subjectKind, subject_id AS subjectId, salt,
            previous_hash AS previousHash FROM day_book WHERE id = 50`,
        )
        .get()
      if (!row) throw new Error('no such row')
      const input = '{"forged":true}'
      const commitment = commitmentTo(row.salt, input)
      db.prepare('UPDATE day_book SET input = ?, commitment = ?, hash = ? WHERE id = 50').run(
        input,
        commitment,
        rowHash({ ...row, commitment }),
      )
    })
    expect(faults(file)).toEqual([
      expect.objectContaining({ code: 'dayBook.chain', values: expect.objectContaining({ id: 51 }) }),
    ])
  })

  it('a trigger that forbids change and is gone is named', () => {
    damaged(() => undefined, { putBack: false })
    expect(faults(file)).toContainEqual({
      code: 'shape.missing',
      values: { type: 'trigger', name: 'documents_are_never_changed' },
    })
  })

  it('a paper with one byte changed beside the ledger is named by its kind and number', () => {
    copyFileSync(clean, file)
    const path = keptPaperPath(file, drawn.hash)
    const bytes = Buffer.from(drawn.bytes)
    bytes.writeUInt8(bytes.readUInt8(9) ^ 1, 9)
    writeFileSync(path, bytes)
    expect(faults(file)).toEqual([
      { code: 'keptPaper.damaged', values: { kind: 'claim-check', number: '2201', hash: drawn.hash } },
    ])
    writeFileSync(path, drawn.bytes)
  })

  it('a photograph that is missing or has other bytes is named by its hash', () => {
    copyFileSync(clean, file)
    const path = photographPath(file, picture)
    writeFileSync(path, 'other bytes here')
    expect(faults(file)).toEqual([{ code: 'photograph.damaged', values: { hash: picture.hash } }])
    const elsewhere = join(place.folder, 'elsewhere.countwheel')
    copyFileSync(clean, elsewhere)
    const missing = faults(elsewhere)
    expect(missing).toContainEqual({ code: 'photograph.missing', values: { hash: picture.hash } })
    expect(missing).toContainEqual(expect.objectContaining({ code: 'keptPaper.missing' }))
    writeFileSync(path, picture.bytes)
  })

  it('a page of the file with its bytes overwritten is damage', () => {
    copyFileSync(clean, file)
    const bytes = readFileSync(file)
    bytes.fill(0x55, Math.floor(bytes.length / 8192) * 4096, Math.floor(bytes.length / 8192) * 4096 + 4096)
    writeFileSync(file, bytes)
    // A page that opening needs is told by the refusal to open; the command says the same of it.
    const told = () => {
      try {
        return codes(file)
      } catch (error) {
        if (error instanceof LedgerRefused) return [error.code]
        throw error
      }
    }
    expect(told()).toEqual(
      expect.arrayContaining([expect.stringMatching(/^(file\.damaged|check\.stopped|ledger\.damaged)$/)]),
    )
  })
})

describe('one byte changed anywhere in the day book', () => {
  const columns = [
    'at',
    'act',
    'subject_kind',
    'input',
    'salt',
    'commitment',
    'previous_hash',
    'hash',
  ] as const

  it('is found in the row it was changed in, whatever the column, the place and the byte', () => {
    const count = new Database(clean, { readonly: true })
      .prepare<[], { n: number }>('SELECT count(*) AS n FROM day_book')
      .get()?.n
    const change = fc.record({
      id: fc.integer({ min: 1, max: count ?? 1 }),
      column: fc.constantFrom(...columns),
      at: fc.nat(),
      letter: fc.constantFrom(...'0123456789abcxyzAZ-:{}"'),
    })
    fc.assert(
      fc.property(change, ({ id, column, at, letter }) => {
        let same = false
        damaged(db => {
          const text = String(db.prepare(`SELECT ${column} FROM day_book WHERE id = ?`).pluck().get(id))
          const place = at % text.length
          same = text[place] === letter
          db.prepare(`UPDATE day_book SET ${column} = ? WHERE id = ?`).run(
            text.slice(0, place) + letter + text.slice(place + 1),
            id,
          )
        })
        fc.pre(!same)
        const named = faults(file).filter(one => one.code.startsWith('dayBook.') && one.values.id === id)
        expect(named.length).toBeGreaterThan(0)
      }),
      { numRuns: 12 },
    )
  })

  it('is found where the byte is changed in the file itself, past SQLite', () => {
    copyFileSync(clean, file)
    const bytes = readFileSync(file)
    const db = new Database(clean, { readonly: true })
    const input = db
      .prepare("SELECT input FROM day_book WHERE act = 'accounts.pay' ORDER BY id LIMIT 1")
      .pluck()
      .get() as string
    db.close()
    const at = bytes.indexOf(input)
    expect(at).toBeGreaterThan(0)
    const figure = at + input.indexOf('"amount":"') + '"amount":"'.length
    bytes[figure] = bytes[figure] === 0x39 ? 0x38 : 0x39
    writeFileSync(file, bytes)
    expect(faults(file)).toEqual([
      expect.objectContaining({
        code: 'dayBook.changed',
        values: expect.objectContaining({ act: 'accounts.pay' }),
      }),
    ])
  })
})

describe('npm run verify', () => {
  const verify = async (...args: string[]) => {
    try {
      return { code: 0, ...(await run(process.execPath, [command, ...args])) }
    } catch (error) {
      return error as { code: number; stdout: string; stderr: string }
    }
  }

  it('says that a sound ledger is sound, ends with 0, and leaves every byte and date of the file as it was', async () => {
    copyFileSync(clean, file)
    const [bytes, before] = [readFileSync(file), statSync(file)]
    const { code, stdout } = await verify('--ledger', file)
    expect(code).toBe(0)
    expect(stdout).toContain(words.sound({ file }))
    expect(readFileSync(file).equals(bytes)).toBe(true)
    expect(statSync(file).mtimeMs).toBe(before.mtimeMs)
  })

  it('says in a sentence what is wrong where and ends with 1; with --json as data', async () => {
    damaged(sql("UPDATE documents SET total_minor = total_minor + 1 WHERE kind = 'invoice' AND sequence = 1"))
    const told = await verify('--ledger', file)
    expect(told.code).toBe(1)
    expect(told.stdout).toContain('The invoice I0001 comes to')
    const json = await verify('--ledger', file, '--json')
    expect(json.code).toBe(1)
    const answer = JSON.parse(json.stdout)
    expect(answer.sound).toBe(false)
    expect(answer.checks.find((c: { name: string }) => c.name === 'papers').faults[0]).toMatchObject({
      code: 'paper.total',
      values: { number: 'I0001' },
    })
  })

  it('names a file cut short as damaged', async () => {
    writeFileSync(file, readFileSync(clean).subarray(0, 50_000))
    const { code, stdout } = await verify('--ledger', file)
    expect(code).toBe(1)
    expect(stdout).toContain(words.faults['file.unopenable']())
  })

  it('ends with 2 and says why where there is nothing to look through', async () => {
    expect(await verify()).toMatchObject({ code: 2, stderr: expect.stringContaining('--ledger') })
    expect(await verify('--ledger', '/nowhere/at.all')).toMatchObject({ code: 2 })
    writeFileSync(join(place.folder, 'note.txt'), 'Buy two mainsprings, and oil. '.repeat(20))
    const { code, stderr } = await verify('--ledger', join(place.folder, 'note.txt'))
    expect(code).toBe(2)
    expect(stderr).toContain('not a Countwheel ledger')
  })

  it('looks at what a killed program left in the log beside the file', async () => {
    copyFileSync(clean, file)
    const ledger = openLedger(file, { migrations, now, random })
    ledger.write(tx => tx.run('UPDATE parts SET in_stock = in_stock + 7 WHERE id = 1'))
    const killed = join(place.folder, 'killed.countwheel')
    for (const ending of ['', '-wal']) copyFileSync(`${file}${ending}`, `${killed}${ending}`)
    ledger.close()
    expect(codes(killed)).toContain('derived.stock')
  })
})
