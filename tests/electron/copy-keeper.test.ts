import { spawnSync } from 'node:child_process'
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openLedger } from '../../db/file/ledger.ts'
import { lookInto } from '../../db/file/look.ts'
import { readManifest, sha256Of } from '../../db/file/manifest.ts'
import { Refusal } from '../../db/rows/refusal.ts'
import { backupFolder, backupsOf, copyPath } from '../../electron/copies/backups.ts'
import { type CopyKeeper, copyKeeper } from '../../electron/copies/keeper.ts'
import { pruneCopies } from '../../electron/copies/prune.ts'
import { copiesOf } from '../../electron/copies/restore.ts'
import { writeBackup } from '../../electron/copies/write-backup.ts'
import { random } from '../chance.ts'
import { migrations } from '../db/temporary-ledger.ts'
import { picture } from '../pictures/pictures.ts'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
let keeper: CopyKeeper
let stick: string
beforeEach(async () => {
  shop = await openTestShop()
  keeper = copyKeeper(shop.ledger, () => shop.clock.at)
  stick = join(shop.folder, 'stick', 'Countwheel')
})
afterEach(() => shop.close())

const copies = (folder = backupFolder(shop.file)) => backupsOf(shop.file, folder).map(({ at }) => at)
const reason = async (body: () => Promise<unknown>): Promise<string> => {
  const error = await body().then(
    () => undefined,
    (thrown: unknown) => thrown,
  )
  if (error instanceof Refusal) return error.problems.map(({ code }) => code).join()
  throw error ?? new Error('nothing was refused')
}
const set = async (some: object) => {
  const { settings } = await shop.view('shop')
  return shop.act('shop.changeSettings', { backups: { ...settings.backups, ...some } })
}
const onStick = async () => {
  mkdirSync(stick, { recursive: true })
  await set({ folder: stick })
}
/** Every file in a folder with its size and when it was written. */
const files = (folder: string) =>
  new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter(entry => entry.isFile())
      .map(entry => join(entry.parentPath, entry.name))
      .map(path => [path, statSync(path, { bigint: true }).mtimeNs]),
  )

describe('copies that nobody asks for', () => {
  it('are made at the first look of a day where something was entered since the last, and not again', async () => {
    await keeper.look()
    expect(copies()).toEqual(['2027-03-01T09:20:00.000Z'])
    shop.clock.at = '2027-03-01T11:00:00.000Z'
    await takeInPell(shop)
    await keeper.look()
    expect(copies()).toHaveLength(1)
    shop.clock.at = '2027-03-02T08:00:00.000Z'
    await keeper.look()
    await keeper.look()
    expect(copies()).toHaveLength(2)
    shop.clock.at = '2027-03-03T08:00:00.000Z'
    await keeper.look()
    expect(copies()).toHaveLength(2)
  })

  it('are made when the shop has closed, and on closing the program, once for the same entries', async () => {
    await keeper.look()
    await takeInPell(shop)
    shop.clock.at = '2027-03-01T17:00:00.000Z'
    await keeper.look()
    expect(copies()[0]).toBe('2027-03-01T17:00:00.000Z')
    shop.clock.at = '2027-03-01T18:00:00.000Z'
    await keeper.atClosing()
    expect(copies()).toHaveLength(2)
    await takeInPell(shop, { owner: { name: 'Odalys Wren' }, clock: { form: 'wall', trains: 1 } })
    await keeper.atClosing()
    expect(copies()[0]).toBe('2027-03-01T18:00:00.000Z')
  })

  it('are not made where the shop has turned them off, and are when somebody asks', async () => {
    await set({ automatic: false })
    await keeper.look()
    await keeper.atClosing()
    await keeper.copyBefore()
    expect(copies()).toEqual([])
    await keeper.copyNow()
    expect(copies()).toHaveLength(1)
  })

  it('are never made twice at one time', async () => {
    await Promise.all([keeper.look(), keeper.copyNow(), keeper.look(), keeper.atClosing()])
    expect(copies()).toHaveLength(1)
    expect(readdirSync(shop.folder).filter(name => name.includes('unfinished'))).toEqual([])
  })

  it('go before an import beside the ledger where the shop’s folder is away', async () => {
    await onStick()
    rmSync(stick, { recursive: true })
    await keeper.copyBefore()
    expect(copies()).toHaveLength(1)
    expect(existsSync(stick)).toBe(false)
  })
})

describe('a copy', () => {
  it('says with its manifest what it is of, how far it goes, and the hash of its file', async () => {
    await takeInPell(shop)
    await keeper.copyNow()
    const path = copyPath(backupFolder(shop.file), shop.file, shop.clock.at)
    const { identity, tail } = lookInto(path)
    expect(readManifest(path)).toEqual({
      format: 1,
      identity,
      head: tail,
      bytes: statSync(path).size,
      sha256: await sha256Of(path),
    })
  })

  it('writes a second time no photograph or paper that is there', async () => {
    await takeInPell(shop)
    await shop.ask('/api/photographs', { method: 'PUT', body: new Uint8Array(picture('quadrants.jpg')) })
    await shop.ask('/api/backup', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: '{}',
    })
    const before = files(backupFolder(shop.file))
    shop.clock.at = '2027-03-02T09:00:00.000Z'
    await keeper.copyNow()
    const after = files(backupFolder(shop.file))
    for (const [path, written] of before) expect([path, after.get(path)]).toEqual([path, written])
    const copy = copyPath(backupFolder(shop.file), shop.file, shop.clock.at)
    expect([...after.keys()].filter(path => !before.has(path)).toSorted()).toEqual([copy, `${copy}.manifest`])
    expect(
      lookInto(copy)
        .files.map(({ what }) => what)
        .toSorted(),
    ).toEqual(['papers', 'photographs'])
  })

  it('has what is entered while it is made whole or not at all, and acts go on', async () => {
    const made = keeper.copyNow()
    for (let n = 0; n < 20; n++) await shop.act('register.addOwner', { name: `Tobias Vane ${n}` })
    await made
    const copy = new Database(copyPath(backupFolder(shop.file), shop.file, shop.clock.at), { readonly: true })
    expect(copy.pragma('integrity_check', { simple: true })).toBe('ok')
    const owners = copy.prepare('SELECT count(*) FROM owners').pluck().get()
    const entries = copy
      .prepare("SELECT count(*) FROM day_book WHERE act = 'register.addOwner'")
      .pluck()
      .get()
    expect(owners).toBe(entries)
    copy.close()
  })

  it('that was ended on the way is none, and the next one takes away what is left of it', async () => {
    const ending = new AbortController()
    const folder = backupFolder(shop.file)
    ending.abort()
    await expect(
      writeBackup(shop.ledger, { at: shop.clock.at, folder, signal: ending.signal }),
    ).rejects.toThrow()
    expect(copies()).toEqual([])
    writeFileSync(`${copyPath(folder, shop.file, shop.clock.at)}.unfinished`, 'half')
    writeFileSync(`${copyPath(folder, shop.file, shop.clock.at)}.manifest`, '{}')
    expect(copies()).toEqual([])
    expect(copiesOf(shop.file)).toEqual([])
    shop.clock.at = '2027-03-01T10:00:00.000Z'
    await keeper.look()
    expect(copies()).toEqual(['2027-03-01T10:00:00.000Z'])
    expect([...files(folder).keys()].filter(path => path.endsWith('.unfinished'))).toEqual([])
  })
})

/** Whether a small disk of its own can be had here: only the system's administrator may mount one. */
const mayMount = process.platform === 'linux' && process.getuid?.() === 0
const noMount = ' (not tried: no disk can be mounted here)'

describe('a folder that is not as it should be', () => {
  it('gone, is said and not made anew; there again, the copy is made at once and that is said', async () => {
    await onStick()
    await keeper.look()
    expect(keeper.view()).toMatchObject({ there: true, failed: [], cameBackAt: null })
    const away = join(shop.folder, 'pocket')
    renameSync(join(shop.folder, 'stick'), away)
    shop.clock.at = '2027-03-04T09:00:00.000Z'
    await takeInPell(shop)
    await keeper.look()
    expect(existsSync(stick)).toBe(false)
    expect(keeper.view()).toMatchObject({
      there: false,
      copiedAt: '2027-03-01T09:20:00.000Z',
      lateDays: 3,
    })
    renameSync(away, join(shop.folder, 'stick'))
    shop.clock.at = '2027-03-04T12:00:00.000Z'
    await keeper.look()
    expect(copies(stick)[0]).toBe('2027-03-04T12:00:00.000Z')
    expect(keeper.view()).toMatchObject({ there: true, lateDays: null, cameBackAt: shop.clock.at })
  })

  it('gone, refuses a copy that somebody asks for, in a sentence', async () => {
    await set({ folder: stick })
    expect(await reason(() => keeper.copyNow())).toBe('backup.folderGone')
    expect((await shop.view('copies')).there).toBe(false)
  })

  it('a file in its place, is said, and tried again once it may be mended', async () => {
    writeFileSync(backupFolder(shop.file), 'a file in the way')
    await keeper.look()
    expect(keeper.view().failed).toMatchObject([{ code: 'backup.noAccess' }])
    rmSync(backupFolder(shop.file))
    await keeper.look()
    expect(copies()).toEqual([])
    shop.clock.at = '2027-03-01T09:35:00.000Z'
    await keeper.look()
    expect(copies()).toHaveLength(1)
    expect(keeper.view().failed).toEqual([])
  })

  it.runIf(mayMount)(
    `full or read-only, is said, and nothing half-written stays${mayMount ? '' : noMount}`,
    async () => {
      await onStick()
      const mount = (...how: string[]) => spawnSync('mount', [...how, stick])
      try {
        mount('-t', 'tmpfs', '-o', 'size=300k', 'tmpfs')
        expect(await reason(() => keeper.copyNow())).toBe('backup.full')
        expect([...files(stick).keys()].filter(path => /unfinished|manifest/.test(path))).toEqual([])
        expect(copies(stick)).toEqual([])
        mount('-o', 'remount,size=30m')
        await keeper.copyNow()
        mount('-o', 'remount,ro')
        shop.clock.at = '2027-03-01T10:00:00.000Z'
        expect(await reason(() => keeper.copyNow())).toBe('backup.noAccess')
        expect(copies(stick)).toEqual(['2027-03-01T09:20:00.000Z'])
      } finally {
        spawnSync('umount', [stick])
      }
    },
  )

  it('of another ledger of the same name, is left as it is', async () => {
    const other = join(shop.folder, 'other', 'shop.countwheel')
    const now = () => shop.clock.at
    const otherLedger = openLedger(other, { migrations, now, random })
    mkdirSync(stick, { recursive: true })
    await writeBackup(otherLedger, { at: '2027-02-01T09:00:00.000Z', folder: stick })
    otherLedger.close()
    const before = files(stick)
    await set({ folder: stick })
    expect(await reason(() => keeper.copyNow())).toBe('backup.otherLedger')
    expect(files(stick)).toEqual(before)
  })
})

describe('taking old copies away', () => {
  const keep = { days: 1, weeks: 0, months: 0, years: 0 }
  const on = async (at: string) => {
    shop.clock.at = at
    await writeBackup(shop.ledger, { at, folder: backupFolder(shop.file) })
  }
  const blob = (folder: string, hash: string) =>
    join(backupFolder(shop.file), folder, hash.slice(0, 2), `${hash}.jpg`)

  it('takes the photographs that no copy needs, and nothing that is not ours', async () => {
    await shop.ask('/api/photographs', { method: 'PUT', body: new Uint8Array(picture('quadrants.jpg')) })
    await on('2027-03-01T10:00:00.000Z')
    const needed = lookInto(copyPath(backupFolder(shop.file), shop.file, shop.clock.at)).files
    const unneeded = 'ab'.repeat(32)
    const foreign = [blob('shop.photographs', 'holiday'), blob('other.photographs', unneeded)]
    for (const path of [...foreign, blob('shop.photographs', unneeded)]) {
      mkdirSync(join(path, '..'), { recursive: true })
      writeFileSync(path, 'x')
    }
    for (const day of ['02', '03', '04']) await on(`2027-03-${day}T10:00:00.000Z`)
    await pruneCopies(backupFolder(shop.file), shop.file, keep, 'Europe/London')
    expect(copies()).toEqual(['2027-03-04T10:00:00.000Z', '2027-03-03T10:00:00.000Z'])
    expect(existsSync(blob('shop.photographs', unneeded))).toBe(false)
    for (const path of foreign) expect(readFileSync(path, 'utf8')).toBe('x')
    expect(needed).not.toEqual([])
    for (const { hash } of needed) expect(existsSync(blob('shop.photographs', hash))).toBe(true)
    expect(
      files(backupFolder(shop.file)).has(
        `${copyPath(backupFolder(shop.file), shop.file, '2027-03-01T10:00:00.000Z')}.manifest`,
      ),
    ).toBe(false)
  })

  it('takes no photograph while a copy cannot be looked into', async () => {
    for (const day of ['01', '02', '03', '04']) await on(`2027-03-${day}T10:00:00.000Z`)
    const unneeded = blob('shop.photographs', 'cd'.repeat(32))
    mkdirSync(join(unneeded, '..'), { recursive: true })
    writeFileSync(unneeded, 'x')
    writeFileSync(copyPath(backupFolder(shop.file), shop.file, '2027-03-03T10:00:00.000Z'), 'no ledger')
    await pruneCopies(backupFolder(shop.file), shop.file, keep, 'Europe/London')
    expect(copies()).toHaveLength(2)
    expect(existsSync(unneeded)).toBe(true)
  })
})
