import { spawn } from 'node:child_process'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, expect, it } from 'vitest'
import { freshHandler, testSettings } from '../electron/handler-fixture.ts'

const shop = freshHandler()
await shop.act('shop.open', { settings: testSettings, person: 'Ines Marrow' })
shop.ledger.close()
afterAll(() => shop.close())

/** Runs the writer, its owners named from `from` on, until it has acknowledged `entries`, then kills it without warning. Returns what it acknowledged. */
function killedAfter(entries: number, from: number): Promise<number[]> {
  return new Promise((resolve, reject) => {
    const writer = spawn(
      process.execPath,
      [join(import.meta.dirname, 'take-in-writer.ts'), shop.file, String(from)],
      {
        stdio: ['ignore', 'pipe', 'inherit'],
      },
    )
    let said = ''
    writer.stdout.on('data', chunk => {
      said += chunk
      if (said.split('\n').length > entries) writer.kill('SIGKILL')
    })
    writer.on('error', reject)
    writer.on('exit', () => resolve(said.split('\n').slice(0, -1).map(Number)))
  })
}

it('loses no acknowledged entry to kill −9, keeps no half of one, and leaves no gap in its numbers', async () => {
  const acknowledged: number[] = []
  for (const [i, entries] of [1, 3, 7, 12, 20].entries())
    acknowledged.push(...(await killedAfter(entries, 1000 * i)))
  const db = new Database(shop.file)
  const numbers = db.prepare<[], { number: number }>('SELECT number FROM repairs ORDER BY number').all()
  const count = (sql: string) => db.prepare<[], { n: number }>(sql).get()?.n
  expect(acknowledged.length).toBeGreaterThanOrEqual(43)
  expect(numbers.map(row => row.number)).toEqual(expect.arrayContaining(acknowledged))
  expect(numbers.map(row => row.number)).toEqual(numbers.map((_, index) => index + 1))
  for (const table of ['clocks', 'owners', 'belongings', 'documents'])
    expect({ table, n: count(`SELECT count(*) AS n FROM ${table}`) }).toEqual({ table, n: numbers.length })
  expect(count('SELECT count(*) AS n FROM day_book')).toBe(numbers.length + 1)
  expect(db.pragma('integrity_check', { simple: true })).toBe('ok')
  db.close()
}, 60_000)
