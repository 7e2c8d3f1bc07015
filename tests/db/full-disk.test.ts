import { spawnSync } from 'node:child_process'
import { statSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { sql } from 'drizzle-orm'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openTestShop, type Shop, takeInPell } from '../electron/handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const count = (db: Database.Database, table: string) =>
  db.prepare<[], { n: number }>(`SELECT count(*) AS n FROM ${table}`).get()?.n

describe('a full disk', () => {
  const mostPages = (pages: number) => shop.ledger.read.get(sql.raw(`PRAGMA max_page_count = ${pages}`))

  it('is told as what it is, nothing of the entry is kept, and the same entry goes in once there is room', async () => {
    const repair = await takeInPell(shop)
    const entry = {
      repairId: repair.id,
      component: 'dial',
      grade: 'marked',
      remark: 'Rubbed at the rim. '.repeat(15),
    }
    const { page_count: pages } = shop.ledger.read.get<{ page_count: number }>(sql`PRAGMA page_count`)
    mostPages(pages)
    let answer = await shop.tryAct('counter.noteCondition', entry)
    for (let tries = 0; answer.status === 200 && tries < 200; tries++)
      answer = await shop.tryAct('counter.noteCondition', entry)
    expect(answer).toMatchObject({ status: 507, body: { problems: [{ code: 'request.diskFull' }] } })
    const before = await shop.view(`repairs/${repair.number}`)
    expect((await shop.tryAct('counter.noteCondition', entry)).status).toBe(507)
    expect(await shop.view(`repairs/${repair.number}`)).toEqual(before)
    mostPages(pages * 10)
    await shop.act('counter.noteCondition', entry)
    expect(shop.ledger.read.get(sql`PRAGMA integrity_check`)).toEqual({ integrity_check: 'ok' })
  })
})

// A limit on a file's size, kept by the system, makes the very write fail: only there is it to be had.
describe.runIf(process.platform !== 'win32')('a disk that fails to write', () => {
  it('is told, loses no acknowledged entry, keeps no half of one and leaves a sound file', () => {
    shop.ledger.close()
    const blocks = Math.ceil((statSync(shop.file).size + 400_000) / 512)
    const limited = `trap "" XFSZ; ulimit -f ${blocks}; exec "$0" "$@"`
    const writer = join(import.meta.dirname, 'take-in-writer.ts')
    const { stdout } = spawnSync('/bin/sh', ['-c', limited, process.execPath, writer, shop.file], {
      encoding: 'utf8',
    })
    const said = stdout.trim().split('\n')
    expect(said.at(-1)).toBe('500 request.diskFailed')
    const acknowledged = said.slice(0, -1).map(Number)
    expect(acknowledged.length).toBeGreaterThan(3)
    const db = new Database(shop.file)
    const numbers = db
      .prepare<[], { number: number }>('SELECT number FROM repairs ORDER BY number')
      .all()
      .map(({ number }) => number)
    expect(numbers).toEqual(acknowledged)
    for (const table of ['clocks', 'owners', 'documents']) expect(count(db, table)).toBe(numbers.length)
    expect(count(db, 'day_book')).toBe(numbers.length + 1)
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok')
    db.close()
  })
})
