import { spawnSync } from 'node:child_process'
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { gunzipSync } from 'node:zlib'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { headPath, readHead } from '../../db/file/head.ts'
import { type Ledger, type OpenOptions, openLedger } from '../../db/file/ledger.ts'
import { LedgerGone, LedgerRefused } from '../../db/file/ledger-refused.ts'
import { openUntouched } from '../../db/file/untouched.ts'
import { verb } from '../../db/rows/verb.ts'
import { dayBook, owners, people } from '../../db/schema/index.ts'
import { random } from '../chance.ts'
import { migrations, now, temporaryFolder } from './temporary-ledger.ts'

let place: ReturnType<typeof temporaryFolder>
let file: string
beforeEach(() => {
  place = temporaryFolder()
  file = join(place.folder, 'shop.countwheel')
})
afterEach(() => place.remove())

const at = (...path: string[]) => join(place.folder, ...path)
const open = (path = file, more: Partial<OpenOptions> = {}) =>
  openLedger(path, { migrations, now, random, ...more })

const enter = verb('shop.addPerson', (tx, input: { name: string }) => {
  const { id } = tx.insert(people).values(input).returning().get()
  return { subject: { kind: 'person', id }, result: { id } }
})

/** So many entries, each a minute after the one before, in long names so that the file grows. */
function enterSome(ledger: Ledger, count: number, from = 0): void {
  for (let n = from; n < from + count; n++)
    enter(
      ledger,
      { at: new Date(Date.UTC(2027, 2, 1, 9, n)).toISOString(), personId: null },
      {
        name: `Person ${n} ${'x'.repeat(400)}`,
      },
    )
}

const countIn = (ledger: Ledger) => ledger.read.select().from(people).all().length

/** The file, its log and what is known beside it, as a killed program leaves them, under another name. */
function killed(ledger: Ledger, name: string): string {
  const copy = at(name, 'shop.countwheel')
  mkdirSync(dirname(headPath(copy)), { recursive: true })
  for (const [from, to] of [
    [ledger.file, copy],
    [`${ledger.file}-wal`, `${copy}-wal`],
    [headPath(ledger.file), headPath(copy)],
  ] as const)
    copyFileSync(from, to)
  return copy
}

/** Why it is not opened, with file and log as they were before. */
function refused(path = file, more: Partial<OpenOptions> = {}): LedgerRefused {
  const both = () => ['', '-wal'].map(end => readFileSync(`${path}${end}`, { flag: 'a+' }).toString('base64'))
  const before = both()
  try {
    open(path, more).close()
  } catch (error) {
    expect(error).toBeInstanceOf(LedgerRefused)
    expect(both()).toEqual(before)
    return error as LedgerRefused
  }
  throw new Error('it was opened')
}

/** What the log has last of the file's first page, put into the file: a checkpoint that was killed after its first page. */
function checkpointFirstPage(path: string): void {
  const log = readFileSync(`${path}-wal`)
  const page = 4096
  let first: Buffer | undefined
  for (let from = 32; from + 24 + page <= log.length; from += 24 + page)
    if (log.readUInt32BE(from) === 1) first = log.subarray(from + 24, from + 24 + page)
  if (!first) throw new Error('the log has no first page')
  const whole = readFileSync(path)
  first.copy(whole, 0)
  writeFileSync(path, whole)
}

describe('a ledger whose program was killed', () => {
  it('while its checkpoint ran is opened whole: the log has the pages that are not in the file yet', () => {
    const ledger = open()
    enterSome(ledger, 300)
    const left = killed(ledger, 'left')
    ledger.close()
    checkpointFirstPage(left)
    const again = open(left)
    expect(countIn(again)).toBe(300)
    again.close()
  })

  it('of an older shape, without anything known beside it, is opened whole and looked through as sound', () => {
    const from = join(import.meta.dirname, '../fixtures/crashed/k.countwheel')
    for (const end of ['', '-wal'])
      writeFileSync(`${file}${end}`, gunzipSync(readFileSync(`${from}${end}.gz`)))
    const counts = ({ read }: Ledger) => [
      read.select().from(owners).all().length,
      read.select().from(dayBook).all().length,
    ]
    const looked = openUntouched(file, { migrations, now, random })
    expect(counts(looked)).toEqual([2723, 1133])
    looked.close()
    const again = open()
    expect(counts(again)).toEqual([2723, 1133])
    again.close()
  })

  it('before it was ever closed is opened with everything that was acknowledged', () => {
    const ledger = open()
    enterSome(ledger, 3)
    const left = killed(ledger, 'left')
    ledger.close()
    const again = open(left)
    expect(countIn(again)).toBe(3)
    again.close()
  })

  it('is still refused where the file is damaged and its log cannot make it whole', () => {
    const ledger = open()
    enterSome(ledger, 3)
    const left = killed(ledger, 'left')
    ledger.close()
    const whole = readFileSync(left)
    whole.fill(0x5a, 100, 4096)
    writeFileSync(left, whole)
    rmSync(headPath(left))
    truncateSync(`${left}-wal`, 33)
    expect(refused(left).code).toBe('ledger.damaged')
  })
})

describe('a log that is not the file’s own', () => {
  /** A ledger killed with a log beside it, and a copy of an hour before put in its place. */
  function replaced(copyOf: (ledger: Ledger) => string): string {
    const first = open()
    enterSome(first, 40)
    first.close()
    copyFileSync(file, at('copied.countwheel'))
    const ledger = open()
    const copy = copyOf(ledger)
    enterSome(ledger, 300, 40)
    const left = killed(ledger, 'left')
    ledger.close()
    copyFileSync(copy, left)
    return left
  }

  it('is never played into a backup that is put in its place', () => {
    const left = replaced(ledger => {
      ledger.backUp(at('backup.countwheel'))
      return at('backup.countwheel')
    })
    expect(refused(left).code).toBe('ledger.foreignLog')
    rmSync(`${left}-wal`)
    expect(refused(left).code).toBe('ledger.entriesMissing')
    const again = open(left, { withoutMissing: true })
    expect(countIn(again)).toBe(40)
    again.close()
  })

  it('is never played into an older copy of the file itself', () => {
    const left = replaced(() => at('copied.countwheel'))
    expect(refused(left).code).toBe('ledger.foreignLog')
  })
})

describe('entries that were acknowledged and are gone', () => {
  let left: string
  beforeEach(() => {
    const first = open()
    enterSome(first, 2)
    first.close()
    const ledger = open()
    enterSome(ledger, 5, 2)
    left = killed(ledger, 'left')
    ledger.close()
  })
  const missing = { count: 5, from: '2027-03-01T09:01:00.000Z', to: '2027-03-01T09:06:00.000Z' }

  it.each([
    ['lost', () => rmSync(`${left}-wal`)],
    ['emptied', () => truncateSync(`${left}-wal`, 0)],
    ['cut within its first entry', () => truncateSync(`${left}-wal`, 32 + 24 + 100)],
  ])('are noticed where the log was %s, with how many and of which hours', (_, harm) => {
    harm()
    const { code, values } = refused(left)
    expect([code, values]).toEqual(['ledger.entriesMissing', missing])
    const looked = openUntouched(left, { migrations, now, random })
    expect(looked.missing).toEqual(missing)
    looked.close()
  })

  it('are noticed where the file and its folders were copied by hand without the log', () => {
    const elsewhere = at('elsewhere', 'shop.countwheel')
    mkdirSync(dirname(headPath(elsewhere)), { recursive: true })
    copyFileSync(left, elsewhere)
    copyFileSync(headPath(left), headPath(elsewhere))
    expect(refused(elsewhere).values).toEqual(missing)
  })

  it('are gone on without once that is decided, and not asked about again', () => {
    rmSync(`${left}-wal`)
    const again = open(left, { withoutMissing: true })
    expect(countIn(again)).toBe(2)
    again.close()
    open(left).close()
  })

  it('where the ledger went on another way without them, are noticed and not counted', () => {
    rmSync(`${left}-wal`)
    const known = readFileSync(headPath(left))
    const other = open(left, { withoutMissing: true })
    enterSome(other, 9, 30)
    other.close()
    writeFileSync(headPath(left), known)
    expect(refused(left).values).toEqual({ from: '2027-03-01T09:38:00.000Z', to: missing.to })
  })
})

describe('what is known beside a ledger', () => {
  it('is up with the last act as soon as it is acknowledged, and never ahead of it', () => {
    const ledger = open()
    enterSome(ledger, 3)
    expect(readHead(file)).toMatchObject({ count: 3, at: '2027-03-01T09:02:00.000Z' })
    expect(() =>
      ledger.write(() => {
        throw new Error('taken back')
      }),
    ).toThrow()
    expect(readHead(file)?.count).toBe(3)
    ledger.close()
  })

  it.each([
    ['the older of its two places', 0],
    ['both of them', 1],
  ])('torn in %s is no reason to refuse a ledger', (_, both) => {
    const ledger = open()
    enterSome(ledger, 3)
    ledger.close()
    const bytes = readFileSync(headPath(file))
    const turns = [0, 1].map(
      slot => JSON.parse(bytes.toString('utf8', slot * 512 + 17, (slot + 1) * 512)).turn,
    )
    const newest = turns[0] > turns[1] ? 0 : 1
    bytes.fill(0, newest * 512 + 40, newest * 512 + 90)
    if (both) bytes.fill(0)
    writeFileSync(headPath(file), bytes)
    const again = open()
    expect(countIn(again)).toBe(3)
    again.close()
  })

  it('may lag behind the ledger, as after a power failure', () => {
    const ledger = open()
    enterSome(ledger, 1)
    const before = readFileSync(headPath(file))
    enterSome(ledger, 1, 1)
    const left = killed(ledger, 'left')
    ledger.close()
    writeFileSync(headPath(left), before)
    const again = open(left)
    expect(countIn(again)).toBe(2)
    again.close()
  })
})

describe('a ledger taken away while it is open', () => {
  it.each([
    ['removed', () => rmSync(file)],
    ['renamed', () => renameSync(file, at('other.countwheel'))],
    [
      'replaced',
      () => {
        copyFileSync(file, at('copy'))
        renameSync(at('copy'), file)
      },
    ],
  ])('%s, is noticed at the next act, which is refused before anything is acknowledged', (_, take) => {
    const ledger = open()
    enterSome(ledger, 1)
    take()
    expect(() => enterSome(ledger, 1, 1)).toThrow(LedgerGone)
    expect(countIn(ledger)).toBe(1)
    ledger.close()
  })

  it('is gone on with once the file is back under its name', () => {
    const ledger = open()
    renameSync(file, at('other.countwheel'))
    expect(() => enterSome(ledger, 1)).toThrow(LedgerGone)
    renameSync(at('other.countwheel'), file)
    enterSome(ledger, 1)
    ledger.close()
  })
})

describe('a place where a ledger stood', () => {
  it.each([
    ['no file', () => rmSync(file)],
    ['an empty file', () => truncateSync(file, 0)],
  ])('with %s is not begun anew while its papers stand there', (_, empty) => {
    const ledger = open()
    enterSome(ledger, 1)
    ledger.close()
    empty()
    expect(() => open()).toThrow(expect.objectContaining({ code: 'ledger.vanished' }))
  })

  it('with another ledger’s papers or photographs beside it is refused', () => {
    open().close()
    open(at('other.countwheel')).close()
    renameSync(headPath(at('other.countwheel')), headPath(file))
    expect(refused().values).toEqual({ folders: 'papers' })
    mkdirSync(at('other.photographs'))
    open(at('other.countwheel')).close()
    rmSync(headPath(file))
    renameSync(at('other.photographs'), at('shop.photographs'))
    expect(refused().values).toEqual({ folders: 'photographs' })
  })

  it('has an identity that its backups share and no other ledger has', () => {
    const identity = (path: string) => {
      const db = new Database(path, { readonly: true })
      const row = db.prepare<[], { identity: string }>('SELECT identity FROM ledger_identity').get()
      db.close()
      return row?.identity
    }
    const ledger = open()
    ledger.backUp(at('backup.countwheel'))
    ledger.close()
    open(at('other.countwheel')).close()
    expect(identity(file)).toMatch(/^[0-9a-f]{32}$/)
    expect(identity(at('backup.countwheel'))).toBe(identity(file))
    expect(identity(at('other.countwheel'))).not.toBe(identity(file))
  })
})

describe('a ledger that may only be read', () => {
  it('in a folder that may be written to is refused with what to do, not with a stack', () => {
    const ledger = open()
    enterSome(ledger, 1)
    ledger.close()
    chmodSync(file, 0o444)
    chmodSync(place.folder, 0o777)
    // Root may write to everything: nobody in particular looks.
    const program = `
      import { openLedger } from ${JSON.stringify(join(import.meta.dirname, '../../db/file/ledger.ts'))}
      process.setuid?.(process.getuid?.() === 0 ? 65534 : process.getuid?.())
      try { openLedger(${JSON.stringify(file)}, { migrations: ${JSON.stringify(migrations)}, now: () => '', random: () => new Uint8Array(16) }) }
      catch (error) { console.log(error.code) }`
    const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', program], {
      encoding: 'utf8',
    })
    expect([stdout.trim(), stderr]).toEqual(['ledger.noAccess', ''])
  })
})
