import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { expect, test } from '@playwright/test'
import { start } from '../../core/words/en/start.ts'
import { type Desktop, type DesktopAsked, openDesktop } from './open-desktop.ts'

const opened: Desktop[] = []

const open = (asked: DesktopAsked = {}) => {
  const desktop = openDesktop(asked)
  opened.push(desktop)
  return desktop
}

test.afterEach(async () => {
  for (const desktop of opened.splice(0)) await desktop.close()
})

function expectClosed(ledger: string): void {
  expect(existsSync(`${ledger}-wal`)).toBe(false)
  expect(readFileSync(ledger).subarray(0, 15).toString()).toBe('SQLite format 3')
}

test('closing the window closes the ledger’s file cleanly', async () => {
  const desktop = open()
  const page = await desktop.page()
  expect(existsSync(`${desktop.ledger}-wal`)).toBe(true)
  await page.close()
  expect(await desktop.ended()).toBe(0)
  expectClosed(desktop.ledger)
  expect(desktop.said()).toBe('')
})

for (const signal of ['SIGTERM', 'SIGINT'] as const) {
  test(`${signal} closes the ledger’s file cleanly`, async () => {
    const desktop = open()
    await desktop.page()
    desktop.process.kill(signal)
    expect(await desktop.ended()).toBe(0)
    expectClosed(desktop.ledger)
  })
}

test('a second start ends, says where the ledger is open and brings that window forward', async () => {
  const first = open()
  await first.page()
  const second = open({ ledger: first.ledger, second: true })
  expect(await second.ended()).toBe(3)
  expect(second.said()).toContain(start.heldInWindow({ file: first.ledger }))
  expect(first.notes('focus')).toHaveLength(1)
  const other = open({ second: true })
  expect(await other.ended()).toBe(3)
  expect(other.said()).toContain(start.otherWindow)
})

test('a file that is no ledger is refused in a sentence and left as it is', async () => {
  const ledger = test.info().outputPath('letter.countwheel')
  writeFileSync(ledger, 'Dear owner, your clock is ready.')
  const desktop = open({ ledger })
  expect(await desktop.ended()).toBe(3)
  expect(desktop.said()).toBe(`${start.ledgerRefusals['ledger.foreign']({ file: ledger })}\n`)
  expect(desktop.notes('error box')).toHaveLength(1)
  expect(readFileSync(ledger, 'utf8')).toBe('Dear owner, your clock is ready.')
})

test('with a broken preload the pages have no bridge: what the other tests see is the preload’s work', async () => {
  const preload = test.info().outputPath('preload.cjs')
  writeFileSync(preload, 'require("node:fs")')
  const page = await open({ preload }).page()
  expect(await page.evaluate(() => 'countwheel' in globalThis)).toBe(false)
})
