import { spawnSync } from 'node:child_process'
import { chmodSync, mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { temporaryFolder } from '../db/temporary-ledger.ts'

let place: ReturnType<typeof temporaryFolder>
beforeEach(() => {
  place = temporaryFolder()
})
afterEach(() => place.remove())

it.skipIf(process.platform === 'win32')(
  'everything of a ledger is its user’s alone: what is written anew, and what stood there open to others',
  () => {
    const ledger = join(place.folder, 'data', 'shop.countwheel')
    mkdirSync(join(place.folder, 'data', 'shop.photographs'), { recursive: true })
    writeFileSync(ledger, '')
    chmodSync(ledger, 0o666)
    chmodSync(join(place.folder, 'data', 'shop.photographs'), 0o777)
    // In a process of its own, for it changes what every file of the process is made with.
    const program = `
      import { openShop } from ${JSON.stringify(join(import.meta.dirname, '../../electron/shop/open-shop.ts'))}
      const shop = await openShop({ ledger: ${JSON.stringify(ledger)}, demo: false }, () => '')
      const answer = await shop.handle(new Request('http://ledger/api/backup', {
        method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{}' }))
      shop.close()
      console.log(answer.status)
      process.exit()`
    const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', program], {
      encoding: 'utf8',
    })
    expect([stdout.trim(), stderr]).toEqual(['200', ''])
    const entries = readdirSync(join(place.folder, 'data'), { recursive: true, withFileTypes: true })
    expect(entries.length).toBeGreaterThan(4)
    for (const entry of entries) {
      const mode = statSync(join(entry.parentPath, entry.name)).mode & 0o777
      expect([entry.name, mode.toString(8)]).toEqual([entry.name, entry.isDirectory() ? '700' : '600'])
    }
  },
)
