import { execFile } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { promisify } from 'node:util'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { archive as words } from '../../core/words/en/archive.ts'
import { readArchive } from '../../db/archive/read.ts'
import { archiveLines } from '../../db/archive/write.ts'
import { folderBeside } from '../../db/file/files-beside.ts'
import { openLedger } from '../../db/file/ledger.ts'
import { photographPath } from '../../db/file/photograph-files.ts'
import { openUntouched } from '../../db/file/untouched.ts'
import { verified } from '../../db/verify/index.ts'
import { keepPapers } from '../../electron/papers/frozen.ts'
import { random } from '../chance.ts'
import { ledgerContents } from '../db/ledger-contents.ts'
import { migrations, now, temporaryFolder } from '../db/temporary-ledger.ts'
import { billedShop } from './billed-shop.ts'

const run = promisify(execFile)
const command = join(import.meta.dirname, '../../electron/commands/archive.ts')
const place = temporaryFolder()
const at = (name: string) => join(place.folder, name)
const file = at('shop.countwheel')
const archive = at('shop.archive')
const picture = { hash: '', mediaType: 'image/jpeg' as const, bytes: Buffer.alloc(300_000, 'Łódź\n') }
picture.hash = createHash('sha256').update(picture.bytes).digest('hex')
const quiet = () => undefined

function written(from: string): string {
  const ledger = openUntouched(from, { migrations, now, random })
  const lines = [...archiveLines(ledger.read, from, quiet)].join('')
  ledger.close()
  return lines
}

beforeAll(async () => {
  const shop = await billedShop()
  await keepPapers(shop.ledger)
  shop.ledger.backUp(file)
  cpSync(folderBeside(shop.file, 'papers'), folderBeside(file, 'papers'), { recursive: true })
  shop.close()
  const db = new Database(file)
  db.prepare('INSERT INTO photographs (hash, media_type, bytes, added_at) VALUES (?, ?, ?, ?)').run(
    picture.hash,
    picture.mediaType,
    picture.bytes.length,
    now(),
  )
  db.prepare(
    "INSERT INTO photograph_uses (hash, repair_id, moment, added_at) VALUES (?, 1, 'intake', ?)",
  ).run(picture.hash, now())
  db.prepare("INSERT INTO condition_pins (note_id, view, x, y) VALUES (1, 'dial', 0.1, 1)").run()
  db.prepare(
    "INSERT INTO drafts (key, page, body, begun_at, changed_at) VALUES ('a-draft-1', 'counter', '{}', ?, ?)",
  ).run(now(), now())
  db.close()
  mkdirSync(dirname(photographPath(file, picture)), { recursive: true })
  writeFileSync(photographPath(file, picture), picture.bytes)
  writeFileSync(archive, written(file))
}, 120_000)
afterAll(() => place.remove())

const readBack = (from: string, into: string, folder = migrations) =>
  readArchive(from, into, { migrations: folder, now, random }, quiet)

/** Every paper beside a ledger by its name, with its bytes. */
const papersBeside = (ledger: string) =>
  readdirSync(folderBeside(ledger, 'papers'), { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.pdf'))
    .sort()
    .map(name => [name, readFileSync(join(folderBeside(ledger, 'papers'), name)).toString('base64')])

describe('the complete archive', () => {
  it('read back into an empty ledger compares equal, row for row, with every photograph and paper, and is sound', () => {
    const again = at('again.countwheel')
    readBack(archive, again)
    expect(ledgerContents(again)).toEqual(ledgerContents(file))
    expect(readFileSync(photographPath(again, picture)).equals(picture.bytes)).toBe(true)
    expect(papersBeside(again).length).toBeGreaterThan(5)
    expect(papersBeside(again)).toEqual(papersBeside(file))
    expect(written(again)).toBe(readFileSync(archive, 'utf8'))
    const ledger = openUntouched(again, { migrations, now, random })
    const checks = [...verified({ read: ledger.read, file: again, migrations })]
    ledger.close()
    expect(checks.flatMap(check => check.faults)).toEqual([])
  })

  it('leaves out a file that is not as it was kept, and can be read back', () => {
    const harmed = at('harmed.countwheel')
    copyFileSync(file, harmed)
    cpSync(folderBeside(file, 'papers'), folderBeside(harmed, 'papers'), { recursive: true })
    mkdirSync(dirname(photographPath(harmed, picture)), { recursive: true })
    writeFileSync(photographPath(harmed, picture), 'other bytes')
    writeFileSync(at('harmed.archive'), written(harmed))
    readBack(at('harmed.archive'), at('harmed-again.countwheel'))
    expect(ledgerContents(at('harmed-again.countwheel'))).toEqual(ledgerContents(file))
    expect(existsSync(photographPath(at('harmed-again.countwheel'), picture))).toBe(false)
  })

  it('has every table of the ledger, each line JSON by itself', () => {
    const lines = readFileSync(archive, 'utf8').trimEnd().split('\n')
    const tables = new Set(lines.map(line => JSON.parse(line).table).filter(Boolean))
    const filled = ledgerContents(file).filter(([, rows]) => rows > 0)
    for (const [name] of filled) expect([...tables]).toContain(name)
    expect(tables.has('drafts')).toBe(true)
  })

  it('finds in the ledger what the words of its entries say, as before', () => {
    const again = at('found.countwheel')
    readBack(archive, again)
    const db = new Database(again, { readonly: true })
    const found = db.prepare("SELECT count(*) AS n FROM find_words WHERE find_words MATCH 'rosamund'").get()
    const expected = new Database(file, { readonly: true })
      .prepare("SELECT count(*) AS n FROM find_words WHERE find_words MATCH 'rosamund'")
      .get()
    expect(found).toEqual(expected)
    expect(found).not.toEqual({ n: 0 })
  })

  it('is refused, and nothing is left of it, when it is cut short, changed anywhere, or none at all', () => {
    const whole = readFileSync(archive)
    const places = Array.from({ length: 25 }, (_, i) => Math.floor((whole.length * i) / 25) + 7)
    for (const place of places) {
      const bytes = Buffer.from(whole)
      bytes[place] = (bytes[place] ?? 0) ^ 1
      writeFileSync(at('bad.archive'), bytes)
      expect(() => readBack(at('bad.archive'), at('bad.countwheel')), String(place)).toThrow(/archive\./)
    }
    for (const length of [0, 30, 5_000, whole.length - 2]) {
      writeFileSync(at('bad.archive'), whole.subarray(0, length))
      expect(() => readBack(at('bad.archive'), at('bad.countwheel')), String(length)).toThrow(/archive\./)
    }
    expect(readdirSync(place.folder).filter(name => name.startsWith('bad.countwheel'))).toEqual([])
  })

  it('is refused when its rows do not fit together, though its hash does', () => {
    const lines = readFileSync(archive, 'utf8').trimEnd().split('\n').slice(0, -1)
    const withoutOwners = lines.filter(line => !line.startsWith('{"table":"owners"'))
    const foreign = [...lines, '{"table":"owners; DROP TABLE owners","row":{"id":1}}']
    for (const wrong of [withoutOwners, foreign]) {
      const text = wrong.map(line => `${line}\n`).join('')
      const sha256 = createHash('sha256').update(text).digest('hex')
      writeFileSync(at('unfit.archive'), `${text}{"end":${wrong.length},"sha256":"${sha256}"}\n`)
      expect(() => readBack(at('unfit.archive'), at('unfit.countwheel'))).toThrow('archive.unfit')
      expect(existsSync(at('unfit.countwheel'))).toBe(false)
    }
  })

  it('of an earlier shape is read in that shape and then brought up to date', () => {
    const folder = at('migrations')
    mkdirSync(folder)
    for (const name of readdirSync(migrations).filter(name => /^\d{4}_/.test(name)))
      copyFileSync(join(migrations, name), join(folder, name))
    const next = readdirSync(folder).length + 1
    writeFileSync(
      join(folder, `${String(next).padStart(4, '0')}_more.sql`),
      "ALTER TABLE owners ADD COLUMN title TEXT NOT NULL DEFAULT 'none';",
    )
    readBack(archive, at('later.countwheel'), folder)
    const ledger = openLedger(at('later.countwheel'), { migrations: folder, now, random })
    expect(ledger.read.get<{ title: string }>('SELECT title FROM owners LIMIT 1')).toEqual({ title: 'none' })
    const later = [...archiveLines(ledger.read, at('later.countwheel'), quiet)].join('')
    ledger.close()
    writeFileSync(at('later.archive'), later)
    expect(() => readBack(at('later.archive'), at('older.countwheel'))).toThrow('archive.newer')
  })
})

describe('npm run archive', () => {
  const command_ = async (...args: string[]) => {
    try {
      return { code: 0, ...(await run(process.execPath, [command, ...args])) }
    } catch (error) {
      return error as { code: number; stdout: string; stderr: string }
    }
  }

  it('writes with its progress, reads back, and never over a file that is there', async () => {
    const out = at('command.archive')
    const wrote = await command_('--ledger', file, '--out', out)
    expect(wrote.code).toBe(0)
    expect(wrote.stderr).toContain('owners: ')
    expect(readFileSync(out, 'utf8')).toBe(readFileSync(archive, 'utf8'))
    const into = at('command.countwheel')
    expect((await command_('--read', out, '--into', into)).code).toBe(0)
    expect(ledgerContents(into)).toEqual(ledgerContents(file))
    const twice = await command_('--read', out, '--into', into)
    expect(twice).toMatchObject({ code: 2, stderr: expect.stringContaining(words.refusals['archive.there']) })
  })

  it('says what it needs, and which photographs and papers are not there', async () => {
    expect(await command_('--ledger', file)).toMatchObject({
      code: 2,
      stderr: expect.stringContaining('--out'),
    })
    expect(await command_('--read', '/nowhere', '--into', at('x'))).toMatchObject({ code: 2 })
    const alone = at('alone.countwheel')
    copyFileSync(file, alone)
    const { code, stderr } = await command_('--ledger', alone, '--out', at(`${basename(alone)}.archive`))
    expect(code).toBe(1)
    expect(stderr).toContain(words.missing({ count: 1 + papersBeside(file).length }))
  })
})
