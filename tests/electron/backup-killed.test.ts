import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { pathBeside } from '../../db/file/files-beside.ts'
import { lookInto } from '../../db/file/look.ts'
import { readManifest, sha256Of } from '../../db/file/manifest.ts'
import { backupFolder, backupsOf, copyPath } from '../../electron/copies/backups.ts'
import { namesakeIn } from '../../electron/copies/set-aside.ts'
import { keepPapers } from '../../electron/papers/frozen.ts'
import { picture } from '../pictures/pictures.ts'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
  await takeInPell(shop)
  await shop.ask('/api/photographs', { method: 'PUT', body: new Uint8Array(picture('quadrants.jpg')) })
  await keepPapers(shop.ledger)
  shop.ledger.close()
})
afterEach(() => shop.close())

const source = (path: string) => JSON.stringify(join(import.meta.dirname, '../..', path))

/** Backs up in a process of its own that ends, without a word to anybody in it, before the n-th thing that it does to a file; returns whether it got that far. */
function killedAt(step: number, at: string): boolean {
  const program = `
    import fs from 'node:fs'
    import { syncBuiltinESMExports } from 'node:module'
    const { openLedger } = await import(${source('db/file/ledger.ts')})
    const { writeBackup } = await import(${source('electron/copies/write-backup.ts')})
    const outside = { now: () => ${JSON.stringify(at)}, random: bytes => new Uint8Array(bytes) }
    const ledger = openLedger(${JSON.stringify(shop.file)}, { migrations: ${source('migrations')}, ...outside })
    let left = ${step}
    const guard = (all, names) => {
      for (const name of names) {
        const done = all[name]
        all[name] = (...args) => (left-- === 0 ? process.reallyExit(137) : done(...args))
      }
    }
    guard(fs, ['renameSync', 'rmSync', 'fsyncSync'])
    guard(fs.promises, ['copyFile', 'open', 'rename', 'rm', 'writeFile'])
    syncBuiltinESMExports()
    await writeBackup(ledger, { at: ${JSON.stringify(at)}, folder: ${JSON.stringify(backupFolder(shop.file))} })
    left = -1
    ledger.close()`
  const { status, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', program], {
    encoding: 'utf8',
  })
  if (status !== 137) expect([status, stderr]).toEqual([0, ''])
  return status === 137
}

/** Every copy that is listed is whole, with everything that belongs to it. */
async function mustAllBeWhole(step: number): Promise<void> {
  const folder = backupFolder(shop.file)
  for (const { at } of backupsOf(shop.file, folder)) {
    const copy = copyPath(folder, shop.file, at)
    expect(readManifest(copy)?.sha256, `step ${step}`).toBe(await sha256Of(copy))
    const { repairs, files } = lookInto(copy)
    expect([repairs, files.length]).toEqual([1, 2])
    for (const { what, hash, ending } of files)
      expect(existsSync(pathBeside(namesakeIn(folder, shop.file), what, hash, ending))).toBe(true)
  }
}

it('a program killed at any step of a backup leaves no copy that is not whole, and the next one goes through', async () => {
  const instant = (n: number) => new Date(Date.UTC(2027, 2, 1, 10, n)).toISOString()
  let step = 0
  for (; killedAt(step, instant(step)); step++) await mustAllBeWhole(step)
  expect(step).toBeGreaterThan(12)
  await mustAllBeWhole(step)
  expect(backupsOf(shop.file)[0]?.at).toBe(instant(step))
  const left = [shop.folder, backupFolder(shop.file)].flatMap(folder =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }),
  )
  expect(left.filter(name => name.includes('unfinished'))).toEqual([])
})
