import { spawnSync } from 'node:child_process'
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type OpenOptions, openLedger } from '../../db/file/ledger.ts'
import { lookInto } from '../../db/file/look.ts'
import { openUntouched } from '../../db/file/untouched.ts'
import { Refusal } from '../../db/rows/refusal.ts'
import { verified } from '../../db/verify/index.ts'
import { backupFolder } from '../../electron/copies/backups.ts'
import { copiesOf, lookAtCopy, restore } from '../../electron/copies/restore.ts'
import { finishChange, setAside } from '../../electron/copies/set-aside.ts'
import { writeBackup } from '../../electron/copies/write-backup.ts'
import { keepPapers } from '../../electron/papers/frozen.ts'
import { openDesk } from '../../electron/shop/desk.ts'
import { random } from '../chance.ts'
import { migrations, temporaryFolder } from '../db/temporary-ledger.ts'
import { picture } from '../pictures/pictures.ts'
import { openTestShop, takeInPell } from './handler-fixture.ts'

const options: OpenOptions = { migrations, now: () => '2027-03-09T18:00:00.000Z', random }

let place: ReturnType<typeof temporaryFolder>
let ledger: string
let backup: string
/** A ledger of two days, closed: on the first a clock and its photograph, and a backup; on the second another. */
beforeEach(async () => {
  place = temporaryFolder()
  const shop = await openTestShop()
  await takeInPell(shop)
  await shop.ask('/api/photographs', { method: 'PUT', body: new Uint8Array(picture('quadrants.jpg')) })
  await keepPapers(shop.ledger)
  shop.clock.at = '2027-03-01T18:00:00.000Z'
  const { file } = await writeBackup(shop.ledger, { at: shop.clock.at, folder: backupFolder(shop.file) })
  shop.clock.at = '2027-03-02T10:00:00.000Z'
  await takeInPell(shop, { owner: { name: 'Odalys Wren' }, clock: { form: 'wall', trains: 1 } })
  await keepPapers(shop.ledger)
  shop.ledger.backUp(join(shop.folder, 'closed'))
  rmSync(join(shop.folder, 'closed'))
  // Its files as they are once it is closed; the fixture takes its own folder away.
  const folder = shop.folder
  shop.ledger.close()
  cpSync(folder, place.folder, { recursive: true })
  rmSync(folder, { recursive: true, force: true })
  ledger = join(place.folder, 'shop.countwheel')
  backup = join(place.folder, 'backups', file)
})
afterEach(() => place.remove())

const repairs = (file: string) => lookInto(file).repairs
const faults = (file: string) => {
  const looked = openUntouched(file, options)
  try {
    return [...verified({ read: looked.read, missing: looked.missing, file, migrations })].flatMap(
      c => c.faults,
    )
  } finally {
    looked.close()
  }
}
const reasons = (body: () => unknown): string[] => {
  try {
    body()
  } catch (error) {
    if (error instanceof Refusal) return error.problems.map(({ code }) => code)
    throw error
  }
  return []
}

describe('looking at a copy', () => {
  it('tells its day, what stands in it, and what would be missing, and changes nothing', () => {
    expect(copiesOf(ledger)).toEqual([backup])
    const look = lookAtCopy(ledger, backup)
    expect(look).toMatchObject({
      refused: null,
      otherLedger: false,
      contents: { owners: 1, repairs: 1, papers: 1, photographs: 1, lastAct: 'photographs.keep' },
      missing: { count: 1, to: '2027-03-02T10:00:00.000Z' },
      filesMissing: 0,
    })
    expect(repairs(ledger)).toBe(2)
  })

  it('counts the photographs and papers that are nowhere', () => {
    for (const folder of ['shop.photographs', 'backups/shop.photographs'])
      rmSync(join(place.folder, folder), { recursive: true })
    expect(lookAtCopy(ledger, backup).filesMissing).toBe(1)
  })

  it('says why one cannot be brought back', () => {
    writeFileSync(join(place.folder, 'letter'), 'Dear Mrs Pell')
    expect(lookAtCopy(ledger, join(place.folder, 'letter')).refused).toBe('ledger.foreign')
    truncateSync(backup, 40_960)
    expect(lookAtCopy(ledger, backup).refused).toBe('ledger.damaged')
  })
})

describe('bringing a copy back', () => {
  it('that is asked for again under its key, as after a lost answer, is done once and answered the same', async () => {
    const desk = await openDesk({ file: ledger, demo: false, asks: true })
    const ask = async (key: string, path: string) => {
      const headers = { 'Content-Type': 'application/json', 'Idempotency-Key': `"${key}"` }
      const sent = { method: 'POST', headers, body: JSON.stringify({ path }) }
      return (await desk.handle(new Request('http://ledger/api/restore/bringBack', sent))).json()
    }
    const setAsideFolders = () => readdirSync(place.folder).filter(name => name.includes('set aside')).length
    const first = await ask('f1e2d3c4', backup)
    expect(await ask('f1e2d3c4', backup)).toEqual(first)
    expect(await ask('f1e2d3c4', `${backup} `)).toMatchObject({ problems: [{ code: 'act.keyUsed' }] })
    expect(setAsideFolders()).toBe(1)
    await ask('f1e2d3c5', backup)
    expect(setAsideFolders()).toBe(2)
    desk.close()
  })

  it('gives it the ledger’s place with its photographs and papers, sound, and keeps what stood there under a dated name', () => {
    const aside = restore(ledger, { path: backup, otherLedger: false }, options)
    expect(aside).toContain('shop set aside 2027-03-09T180000.000Z')
    expect(repairs(ledger)).toBe(1)
    expect(faults(ledger)).toEqual([])
    expect(repairs(join(aside, 'shop.countwheel'))).toBe(2)
    expect(faults(join(aside, 'shop.countwheel'))).toEqual([])
    openLedger(ledger, options).close()
  })

  it('over a killed ledger moves its log aside with it: it is never played into the copy', () => {
    writeFileSync(`${ledger}-wal`, readFileSync(ledger).subarray(0, 40_000))
    const aside = restore(ledger, { path: backup, otherLedger: false }, options)
    expect(existsSync(`${ledger}-wal`)).toBe(false)
    expect(existsSync(join(aside, 'shop.countwheel-wal'))).toBe(true)
    expect(faults(ledger)).toEqual([])
  })

  it('works where the ledger itself is gone or damaged', () => {
    rmSync(ledger)
    expect(lookAtCopy(ledger, backup).missing).toMatchObject({ count: 1 })
    restore(ledger, { path: backup, otherLedger: false }, options)
    expect(repairs(ledger)).toBe(1)
  })

  it('refuses a damaged copy, another ledger’s unless that is said, and a file that is not there, with everything as it was', () => {
    const other = join(place.folder, 'other.countwheel')
    openLedger(other, options).close()
    const tryIt = (path: string) => reasons(() => restore(ledger, { path, otherLedger: false }, options))
    expect(tryIt(other)).toEqual(['restore.otherLedger'])
    expect(tryIt(join(place.folder, 'nowhere'))).toEqual(['restore.nothingThere'])
    const whole = readFileSync(backup)
    whole.fill(0, 60_000, 64_096)
    writeFileSync(backup, whole)
    expect(tryIt(backup)[0]).toMatch(/^restore\.(unsound|refused)$/)
    expect(repairs(ledger)).toBe(2)
    expect(faults(ledger)).toEqual([])
    restore(ledger, { path: other, otherLedger: true }, options)
    expect(repairs(ledger)).toBe(0)
  })

  it('makes room for a new shop without mixing anything of the old one in', () => {
    const aside = setAside(ledger, '2027-03-09T18:00:00.000Z')
    expect(readdirSync(place.folder).filter(name => name.startsWith('shop.'))).toEqual([])
    openLedger(ledger, options).close()
    expect(repairs(ledger)).toBe(0)
    expect(repairs(join(aside, 'shop.countwheel'))).toBe(2)
  })
})

describe('a program killed while it brings a copy back', () => {
  /** Ends a child process, without a word to anybody in it, before the n-th thing that it does to a file; returns whether it got that far. */
  function killedAt(step: number): boolean {
    const program = `
      import fs from 'node:fs'
      import { syncBuiltinESMExports } from 'node:module'
      let left = ${step}
      for (const name of ['renameSync', 'rmSync', 'copyFileSync', 'linkSync', 'writeFileSync', 'mkdirSync', 'fsyncSync']) {
        const done = fs[name]
        fs[name] = (...args) => {
          if (left-- === 0) process.reallyExit(137)
          return done(...args)
        }
      }
      syncBuiltinESMExports()
      const { giveItsPlace } = await import(${JSON.stringify(join(import.meta.dirname, '../../electron/copies/set-aside.ts'))})
      giveItsPlace(${JSON.stringify(ledger)}, ${JSON.stringify(backup)}, '2027-03-09T18:00:00.000Z')`
    const { status, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', program], {
      encoding: 'utf8',
    })
    if (status !== 137) expect([status, stderr]).toEqual([0, ''])
    return status === 137
  }

  it('at any step leaves the one ledger whole or the other at the next start, and nothing is lost', () => {
    const saved = join(place.folder, '..', `${Date.now()}-saved`)
    cpSync(place.folder, saved, { recursive: true })
    const outcomes = new Set<number>()
    let step = 0
    for (; killedAt(step); step++) {
      finishChange(ledger)
      const count = repairs(ledger)
      outcomes.add(count)
      expect(faults(ledger), `step ${step}`).toEqual([])
      const aside = readdirSync(place.folder).find(name => name.includes('set aside'))
      if (count === 1) expect(repairs(join(place.folder, aside ?? '', 'shop.countwheel'))).toBe(2)
      rmSync(place.folder, { recursive: true })
      cpSync(saved, place.folder, { recursive: true })
    }
    rmSync(saved, { recursive: true })
    expect(step).toBeGreaterThan(12)
    expect([...outcomes].sort()).toEqual([1, 2])
  })
})

describe('looking at copies from the running program', () => {
  it('never opens the ledger’s own file a second time: no other process gets at it meanwhile', async () => {
    const desk = await openDesk({ file: ledger, demo: false, asks: true })
    const ask = async (path: string, init?: RequestInit) =>
      (await desk.handle(new Request(`http://ledger/api/restore${path}`, init))).json()
    try {
      expect((await ask('')).copies).toHaveLength(1)
      const json = { 'Content-Type': 'application/json' }
      const itself = await ask('/look', {
        method: 'POST',
        headers: json,
        body: JSON.stringify({ path: ledger }),
      })
      expect(itself.refused).toBe('ledger.inUse')
      const program = `
        import Database from 'better-sqlite3'
        const db = new Database(${JSON.stringify(ledger)}, { timeout: 100 })
        try { db.exec('CREATE TABLE stranger (x)'); console.log('got in') } catch (error) { console.log(error.code) }`
      const { stdout } = spawnSync(process.execPath, ['--input-type=module', '-e', program], {
        encoding: 'utf8',
        cwd: import.meta.dirname,
      })
      expect(stdout.trim()).toMatch(/^SQLITE_BUSY/)
    } finally {
      desk.close()
    }
  })
})

describe('npm run restore', () => {
  const command = join(import.meta.dirname, '../../electron/commands/restore.ts')
  const run = (...args: string[]) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [command, '--ledger', ledger, ...args], {
      encoding: 'utf8',
    })
    return { status, stdout, stderr }
  }

  it('lists the copies, looks at one, and brings it back', () => {
    expect(run().stdout).toContain('1 owners, 1 clocks, 1 repairs')
    expect(run('--from', backup, '--look').stdout).toContain('One entry: what was entered after')
    const { status, stdout } = run('--from', backup)
    expect([status, stdout]).toEqual([0, expect.stringContaining('The copy is in its place')])
    expect(repairs(ledger)).toBe(1)
  })

  it('says what is wrong in a sentence, and ends with 1', () => {
    copyFileSync(join(import.meta.dirname, 'restore.test.ts'), join(place.folder, 'not-one'))
    const { status, stderr } = run('--from', join(place.folder, 'not-one'))
    expect([status, stderr.trim()]).toEqual([
      1,
      'This copy cannot be brought back, and nothing was changed: it is not a Countwheel ledger.',
    ])
    mkdirSync(join(place.folder, 'x'))
  })
})
