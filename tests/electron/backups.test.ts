import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { lastBackup } from '../../electron/shop/opening-refused.ts'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const backUp = (body = '{}') =>
  shop.ask('/api/backup', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body })

describe('backing the ledger up', () => {
  it('writes a whole ledger beside the open one, named by the instant, with everything entered so far', async () => {
    await takeInPell(shop)
    const { status, body } = await backUp()
    expect(status).toBe(200)
    expect(body).toEqual({
      file: 'shop 2027-03-01T092000.000Z.countwheel',
      at: '2027-03-01T09:20:00.000Z',
    })
    const copy = new Database(join(shop.folder, 'backups', body.file), { readonly: true })
    expect(copy.pragma('integrity_check', { simple: true })).toBe('ok')
    expect(copy.prepare('SELECT number FROM repairs').pluck().all()).toEqual([2201])
    copy.close()
  })

  it('is listed with its instant and size, the newest first, and is what a damaged ledger is told to go back to', async () => {
    expect((await shop.view('backups')).rows).toEqual([])
    await backUp()
    shop.clock.at = '2027-03-02T17:00:00.000Z'
    await backUp()
    const { ledger, folder, rows } = await shop.view('backups')
    expect(ledger).toBe(shop.file)
    expect(folder).toBe(join(shop.folder, 'backups'))
    expect(rows.map((row: { at: string }) => row.at)).toEqual([
      '2027-03-02T17:00:00.000Z',
      '2027-03-01T09:20:00.000Z',
    ])
    for (const { kilobytes } of rows) expect(kilobytes).toBeGreaterThan(10)
    expect(lastBackup(shop.file)).toBe(join(folder, rows[0].file))
  })

  it('keeps what the shop’s setting keeps by age, and touches no other file in the folder', async () => {
    mkdirSync(join(shop.folder, 'backups'))
    const others = [
      'notes.txt',
      'shop.countwheel',
      'other 2020-01-01T000000.000Z.countwheel',
      'shop 2020.countwheel',
    ]
    for (const name of others) writeFileSync(join(shop.folder, 'backups', name), 'not ours')
    for (let day = 1; day <= 20; day++) {
      shop.clock.at = new Date(Date.UTC(2027, 2, day, 9)).toISOString()
      expect((await backUp()).status).toBe(200)
    }
    const { rows } = await shop.view('backups')
    // The last 14 days; the newest of their weeks, month and year are among them.
    expect(rows.map(({ at }: { at: string }) => Number(at.slice(8, 10)))).toEqual([
      20, 19, 18, 17, 16, 15, 14, 13, 12, 11, 10, 9, 8, 7,
    ])
    expect(readdirSync(join(shop.folder, 'backups'))).toEqual(expect.arrayContaining(others))
    expect(readdirSync(join(shop.folder, 'backups')).filter(name => name.includes('unfinished'))).toEqual([])
  })

  it('writes nothing in the day book, for it is no act', async () => {
    await backUp()
    expect((await shop.view('dayBook')).rows).toHaveLength(1)
  })

  it('says so where the folder cannot be made, and the ledger goes on', async () => {
    writeFileSync(join(shop.folder, 'backups'), 'a file in the way')
    const { status, body } = await backUp()
    expect(status).toBe(422)
    expect(body.problems[0].code).toBe('backup.noAccess')
    expect((await takeInPell(shop)).number).toBe(2201)
  })

  it('takes nothing but an empty request', async () => {
    for (const body of ['[]', '{"target":"/etc/passwd"}', 'null', '']) {
      const { status } = await backUp(body)
      expect(status).toBeGreaterThanOrEqual(400)
      expect(status).toBeLessThan(500)
    }
    expect(existsSync(join(shop.folder, 'backups'))).toBe(false)
  })
})
