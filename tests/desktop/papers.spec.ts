import { execFileSync } from 'node:child_process'
import { existsSync, statSync } from 'node:fs'
import { dirname } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import type { Bridge } from '../../electron/desktop/bridge.ts'
import { openTestShop, takeInPell } from '../electron/handler-fixture.ts'
import { needTools } from '../tools.ts'
import { type Desktop, openDesktop } from './open-desktop.ts'

declare const window: Window & { readonly countwheel: Bridge }

needTools('pdftotext', 'pdfinfo')

let shop: Awaited<ReturnType<typeof openTestShop>>
let desktop: Desktop
let page: Page

// One window on a ledger with one clock taken in; its claim check is the first paper.
test.beforeAll(async () => {
  shop = await openTestShop()
  await takeInPell(shop)
  shop.ledger.close()
  desktop = openDesktop({ ledger: shop.file })
  page = await desktop.page()
})
test.beforeEach(() => desktop.forget())
test.afterAll(async () => {
  await desktop.close()
  shop.close()
})

const text = (file: string) => execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' })

test('a person who changes their mind saves nothing', async () => {
  expect(await page.evaluate(() => window.countwheel.savePaper('/papers/1.pdf'))).toBe('cancelled')
})

test('a paper is saved whole where the person says, under a name of its own kind and number', async () => {
  const target = test.info().outputPath('claim check.pdf')
  desktop.saveAs(target)
  expect(await page.evaluate(() => window.countwheel.savePaper('/papers/1.pdf?size=a4'))).toBe('done')
  expect(text(target)).toContain('2201')
  expect(existsSync(`${target}.part`)).toBe(false)
  expect(desktop.notes('save dialog')).toMatchObject([
    { defaultPath: expect.stringMatching(/claim-check-2201\.pdf$/) },
  ])
})

test('a paper that cannot be written is told', async () => {
  desktop.saveAs(test.info().outputPath('no such folder', 'paper.pdf'))
  expect(await page.evaluate(() => window.countwheel.savePaper('/papers/1.pdf'))).toBe('failed')
})

test('nothing but papers is reached: nothing else of the ledger and no file of the computer', async () => {
  const target = test.info().outputPath('never.pdf')
  desktop.saveAs(target)
  const paths = [
    '/api/find',
    '/papers/../api/find.pdf',
    'file:///etc/passwd',
    '//elsewhere.test/a.pdf',
    '',
    '/papers/999.pdf',
  ]
  for (const path of paths) {
    expect(await page.evaluate(given => window.countwheel.savePaper(given), path), path).toBe('failed')
    expect(await page.evaluate(given => window.countwheel.printPaper(given), path), path).toBe('failed')
  }
  expect(desktop.notes('open path')).toEqual([])
  expect(existsSync(target)).toBe(false)
})

test('a link to a paper opens it in the computer’s PDF program, in the size it names, and no new window', async () => {
  await page.evaluate(() => {
    document.body.innerHTML =
      '<a href="/papers/1.pdf?size=letter" target="_blank" rel="noopener">claim check</a>'
  })
  await page.getByRole('link').click()
  await expect.poll(() => desktop.notes('open path')).toHaveLength(1)
  expect(desktop.notes('window open')).toMatchObject([{ action: 'deny' }])
  const [file] = desktop.notes('open path') as string[]
  expect(execFileSync('pdfinfo', [file ?? ''], { encoding: 'utf8' })).toContain('612 x 792')
})

test('a paper to print opens there too, for this user only, and is taken away in the end', async () => {
  expect(await page.evaluate(() => window.countwheel.printPaper('/papers/1.pdf?size=a4'))).toBe('done')
  const [file] = desktop.notes('open path') as string[]
  expect(text(file ?? '')).toContain('2201')
  expect(statSync(file ?? '').mode & 0o777).toBe(0o600)
  expect(statSync(dirname(file ?? '')).mode & 0o777).toBe(0o700)
  desktop.process.kill('SIGTERM')
  expect(await desktop.ended()).toBe(0)
  expect(existsSync(file ?? '')).toBe(false)
})
