import { createHash } from 'node:crypto'
import { cpSync, mkdirSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openLedger } from '../../db/file/ledger.ts'
import { LedgerRefused } from '../../db/file/ledger-refused.ts'
import { people } from '../../db/schema/index.ts'
import { random } from '../chance.ts'
import { migrations, now, temporaryFolder } from './temporary-ledger.ts'

let place: ReturnType<typeof temporaryFolder>
let file: string
beforeEach(() => {
  place = temporaryFolder()
  file = join(place.folder, 'shop.countwheel')
})
afterEach(() => place.remove())

const open = (folder = migrations) => openLedger(file, { migrations: folder, now, random })
const bytes = () => createHash('sha256').update(readFileSync(file)).digest('hex')

/** The refusal's code, with the file as it was before. */
function refused(folder = migrations): string {
  const before = bytes()
  try {
    open(folder).close()
  } catch (error) {
    expect(error).toBeInstanceOf(LedgerRefused)
    expect(bytes()).toBe(before)
    return (error as LedgerRefused).code
  }
  throw new Error('it was opened')
}

/** A folder of migrations of which the last adds a table, as a later version would bring. */
function laterMigrations(): string {
  const folder = join(place.folder, 'migrations')
  cpSync(migrations, folder, { recursive: true })
  const next = readdirSync(folder).filter(name => /^\d{4}_/.test(name)).length + 1
  writeFileSync(
    join(folder, `${String(next).padStart(4, '0')}_later.sql`),
    'CREATE TABLE later (id INTEGER PRIMARY KEY) STRICT;',
  )
  return folder
}

describe('opening a ledger', () => {
  it('makes a new file that says what it is in its own header', () => {
    open().close()
    const db = new Database(file, { readonly: true })
    expect(db.pragma('application_id', { simple: true })).toBe(0x43576c67)
    expect(db.pragma('user_version', { simple: true })).toBe(
      readdirSync(migrations).filter(name => /^\d{4}_/.test(name)).length,
    )
    db.close()
  })

  it('leaves no side files behind when it is closed, but what is known of it among its papers', () => {
    open().close()
    expect(readdirSync(place.folder)).toEqual(['shop.countwheel', 'shop.papers'])
  })

  it('keeps what was written, however often it is opened', () => {
    const ledger = open()
    ledger.write(tx => tx.insert(people).values({ name: 'Ines Marrow' }).run())
    ledger.close()
    const again = open()
    expect(again.read.select().from(people).all()).toHaveLength(1)
    again.close()
  })

  it('refuses a second opening while it is open', () => {
    const ledger = open()
    expect(() => open()).toThrow(expect.objectContaining({ code: 'ledger.inUse' }))
    ledger.close()
  })

  it('refuses, untouched, a file that is no SQLite file', () => {
    writeFileSync(file, 'Dear Mrs Pell, your clock is ready.'.repeat(10))
    expect(refused()).toBe('ledger.foreign')
  })

  it('refuses, untouched, another program’s SQLite file', () => {
    const db = new Database(file)
    db.exec('CREATE TABLE other (x)')
    db.close()
    expect(refused()).toBe('ledger.foreign')
  })

  it('refuses, untouched, a ledger cut short', () => {
    open().close()
    truncateSync(file, 40_960)
    expect(refused()).toBe('ledger.damaged')
  })

  it('refuses, untouched, a ledger whose schema page is overwritten', () => {
    open().close()
    const whole = readFileSync(file)
    whole.fill(0x5a, 100, 4096)
    writeFileSync(file, whole)
    expect(refused()).toBe('ledger.damaged')
  })

  it('refuses a ledger from a newer version', () => {
    open(laterMigrations()).close()
    expect(refused()).toBe('ledger.newer')
  })

  it('refuses a ledger whose applied migrations are not the ones this version knows', () => {
    open().close()
    const folder = join(place.folder, 'other')
    mkdirSync(folder)
    for (const name of readdirSync(migrations))
      if (/^\d{4}_/.test(name))
        writeFileSync(join(folder, name), `${readFileSync(join(migrations, name), 'utf8')}\n-- edited`)
    expect(refused(folder)).toBe('ledger.otherHistory')
  })

  it('refuses a folder where a file belongs', () => {
    mkdirSync(file)
    expect(() => open()).toThrow(expect.objectContaining({ code: 'ledger.notAFile' }))
  })

  it('takes a migration folder with a gap for a broken build', () => {
    const folder = join(place.folder, 'gap')
    mkdirSync(folder)
    writeFileSync(join(folder, '0002_late.sql'), 'SELECT 1;')
    expect(() => open(folder)).toThrow('without gaps')
  })
})

describe('bringing an older ledger up to date', () => {
  it('backs the file up first, keeps its entries and applies what is new', () => {
    const ledger = open()
    ledger.write(tx => tx.insert(people).values({ name: 'Ines Marrow' }).run())
    ledger.close()
    const later = open(laterMigrations())
    expect(later.read.select().from(people).all()).toHaveLength(1)
    later.close()
    const [backup] = readdirSync(place.folder).filter(name => name.includes('.before-'))
    const old = new Database(join(place.folder, backup ?? ''), { readonly: true })
    expect(old.prepare('SELECT name FROM people').all()).toEqual([{ name: 'Ines Marrow' }])
    expect(old.prepare("SELECT count(*) AS n FROM sqlite_schema WHERE name = 'later'").get()).toEqual({
      n: 0,
    })
    old.close()
  })

  it('leaves the ledger as it was when a migration breaks a reference', () => {
    const ledger = open()
    ledger.write(tx => tx.insert(people).values({ name: 'Ines Marrow' }).run())
    ledger.close()
    const folder = laterMigrations()
    const [last = ''] = readdirSync(folder)
      .filter(name => /^\d{4}_/.test(name))
      .sort()
      .reverse()
    writeFileSync(
      join(folder, last),
      "INSERT INTO clock_owners (clock_id, owner_id, from_at) VALUES (9, 9, '2027-01-01T00:00:00.000Z');",
    )
    expect(() => open(folder)).toThrow(expect.objectContaining({ code: 'ledger.brokenReferences' }))
    const again = open()
    expect(again.read.select().from(people).all()).toHaveLength(1)
    again.close()
  })
})

describe('a backup', () => {
  it('is a whole ledger that opens by itself', () => {
    const ledger = open()
    ledger.write(tx => tx.insert(people).values({ name: 'Ines Marrow' }).run())
    const copy = join(place.folder, 'copy.countwheel')
    ledger.backUp(copy)
    ledger.close()
    const restored = openLedger(copy, { migrations, now, random })
    expect(restored.read.select().from(people).all()).toHaveLength(1)
    restored.close()
  })

  it('takes the place of an older one only when it is whole, and leaves nothing unfinished behind', () => {
    const ledger = open()
    const copy = join(place.folder, 'copy.countwheel')
    ledger.backUp(copy)
    ledger.backUp(copy)
    ledger.close()
    expect(readdirSync(place.folder).sort()).toEqual(['copy.countwheel', 'shop.countwheel', 'shop.papers'])
  })
})
