import { spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { pathBeside } from '../../db/file/files-beside.ts'
import { lookInto } from '../../db/file/look.ts'
import { copyPath } from '../../electron/copies/backups.ts'
import { copiesOf, lookAtCopy, restore } from '../../electron/copies/restore.ts'
import { writeBackup } from '../../electron/copies/write-backup.ts'
import { keepPapers } from '../../electron/papers/frozen.ts'
import { random } from '../chance.ts'
import { migrations } from '../db/temporary-ledger.ts'
import { picture } from '../pictures/pictures.ts'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
let stick: string
let backup: string
/** A ledger of one clock and one photograph, copied to a folder elsewhere, and closed. */
beforeEach(async () => {
  shop = await openTestShop()
  await takeInPell(shop)
  await shop.ask('/api/photographs', { method: 'PUT', body: new Uint8Array(picture('quadrants.jpg')) })
  await keepPapers(shop.ledger)
  stick = join(shop.folder, 'stick')
  mkdirSync(stick)
  await writeBackup(shop.ledger, { at: shop.clock.at, folder: stick })
  backup = copyPath(stick, shop.file, shop.clock.at)
  shop.ledger.close()
})
afterEach(() => shop.close())

const run = (command: string, ...args: string[]) => {
  const path = join(import.meta.dirname, `../../electron/commands/${command}.ts`)
  const { status, stdout, stderr } = spawnSync(process.execPath, [path, ...args], { encoding: 'utf8' })
  return { status, said: `${stdout}${stderr}` }
}
const verify = () => run('verify', '--ledger', backup)
const options = { migrations, now: () => '2027-03-09T18:00:00.000Z', random }

describe('npm run verify on a backup', () => {
  it('finds it sound, with its photographs and papers beside it', () => {
    const { status, said } = verify()
    expect([status, said]).toEqual([0, expect.stringContaining('is sound')])
    expect(said).toContain('held against their manifest: 1')
    expect(said).toContain('Photographs: 1')
  })

  it('tells that a photograph or a paper of it is gone', () => {
    for (const { what, hash, ending } of lookInto(backup).files) {
      const path = pathBeside(join(stick, 'shop.countwheel'), what, hash, ending)
      const bytes = readFileSync(path)
      rmSync(path)
      expect(verify().status).toBe(1)
      writeFileSync(path, bytes)
    }
    expect(verify().status).toBe(0)
  })

  it('tells one byte that is not as it was written, although SQLite finds nothing in it', () => {
    const bytes = readFileSync(backup)
    // The version of SQLite that wrote the file last (SQLite file format, offset 96): nothing depends on it.
    bytes[99] = (bytes[99] ?? 0) ^ 1
    writeFileSync(backup, bytes)
    const { status, said } = verify()
    expect([status, said]).toEqual([1, expect.stringContaining('not the file that was written')])
    expect(() => restore(shop.file, { path: backup, otherLedger: false }, options)).toThrow('restore.unsound')
  })
})

describe('a backup in the shop’s own folder', () => {
  it('is found although the ledger is gone, and brought back with its photographs and papers', () => {
    rmSync(shop.file)
    for (const what of ['papers', 'photographs'])
      rmSync(join(shop.folder, `shop.${what}`), { recursive: true })
    expect(copiesOf(shop.file)).toEqual([backup])
    expect(lookAtCopy(shop.file, backup)).toMatchObject({ refused: null, filesMissing: 0 })
    expect(run('restore', '--ledger', shop.file).said).toContain(backup)
    expect(run('restore', '--ledger', shop.file, '--from', backup).status).toBe(0)
    expect(run('verify', '--ledger', shop.file)).toMatchObject({ status: 0 })
  })
})
