import { utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { start } from '../../core/words/en/start.ts'
import { LedgerRefused } from '../../db/file/ledger-refused.ts'
import { LedgerHeld } from '../../electron/shop/hold.ts'
import { openingRefused } from '../../electron/shop/opening-refused.ts'
import { temporaryFolder } from './temporary.ts'

describe('why a ledger is not opened', () => {
  test('a damaged ledger is told together with its last good backup', () => {
    const folder = temporaryFolder()
    const file = join(folder, 'shop.countwheel')
    for (const [name, seconds] of [
      ['0002', 2000],
      ['0003', 3000],
      ['0004.unfinished', 4000],
    ] as const) {
      writeFileSync(`${file}.before-${name}`, '')
      utimesSync(`${file}.before-${name}`, seconds, seconds)
    }
    writeFileSync(join(folder, 'other.countwheel.before-0009'), '')
    const sentence = openingRefused(new LedgerRefused('ledger.damaged'), { file })
    expect(sentence).toContain(`${file}.before-0003.`)
    expect(sentence).toContain('was left as it is')
  })

  test('where there is no backup beside it, that is said', () => {
    const file = join(temporaryFolder(), 'shop.countwheel')
    expect(openingRefused(new LedgerRefused('ledger.damaged'), { file })).toContain('no backup beside it')
  })

  test('every refusal is a sentence that names the file', () => {
    const file = join(temporaryFolder(), 'shop.countwheel')
    for (const sentence of Object.values(start.ledgerRefusals)) {
      expect(sentence({ file })).toContain(file)
      expect(sentence({ file })).toMatch(/\. ?$/)
    }
  })

  test('an open ledger is told with the fresh address to it, where it has one', () => {
    const address = 'http://127.0.0.1:1/?key=fresh'
    expect(openingRefused(new LedgerHeld(address), { file: 'a' })).toBe(
      start.heldAtAddress({ file: 'a', address }),
    )
    expect(openingRefused(new LedgerHeld(undefined), { file: 'a' })).toBe(start.heldInWindow({ file: 'a' }))
  })

  test('a port that cannot be had is told; anything else is a mistake of ours and thrown on', () => {
    const refused = (code: string, port?: number) =>
      openingRefused(Object.assign(new Error(code), { code }), {
        file: 'a',
        ...(port !== undefined && { port }),
      })
    expect(refused('EADDRINUSE', 80)).toBe(start.portTaken({ port: 80 }))
    expect(refused('EACCES', 80)).toBe(start.portRefused({ port: 80 }))
    expect(() => refused('EACCES')).toThrow('EACCES')
    expect(() => refused('EIO', 80)).toThrow('EIO')
  })
})
