import { execFileSync } from 'node:child_process'
import { readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { folderBeside } from '../../db/file/files-beside.ts'
import { needTools } from '../tools.ts'
import { demoIn, type StartedShop } from './start-shop.ts'

needTools('pdfinfo')

const { onPage } = en.papers
let shop: StartedShop
let page: Page

// The first paper of the demonstration is a claim check, which comes on three sizes.
test.beforeAll(async ({ browser }) => {
  ;[shop, page] = await demoIn(browser)
})
test.afterAll(() => shop.close())

const itself = () => page.getByRole('region', { name: onPage.section })

/** The paper in the page, or why it is not there: not every browser shows a PDF inside a page. */
async function shown(size: string): Promise<void> {
  if (await page.evaluate(() => navigator.pdfViewerEnabled))
    await expect(itself().getByTitle('Claim check 2201')).toHaveAttribute(
      'src',
      new RegExp(`^/papers/1\\.pdf\\?size=${size}#`),
    )
  else await expect(itself().getByText(onPage.notShown)).toBeVisible()
}

async function saved(): Promise<string> {
  const downloading = page.waitForEvent('download')
  await itself()
    .getByRole('link', { name: /^Save / })
    .press('Enter')
  const download = await downloading
  expect(download.suggestedFilename()).toBe('claim-check-2201.pdf')
  return execFileSync('pdfinfo', [await download.path()], { encoding: 'utf8' })
}

test('a paper is shown in its page and saved on any size it comes on, by keyboard', async () => {
  await page.goto(`${shop.origin}/accounts/paper/1`)
  await expect(itself().getByText(/^A4, drawn by Countwheel /)).toBeVisible({ timeout: 60_000 })
  await shown('a4')
  const issued = await saved()
  expect(issued).toContain('595.28 x 841.89')
  expect(issued).not.toContain(en.papers.drawnAgain)
  await itself().getByRole('radio', { name: 'A4' }).press('ArrowRight')
  await itself().getByRole('radio', { name: 'Letter' }).press('ArrowRight')
  await expect(itself().getByRole('radio', { name: 'A6' })).toBeChecked()
  await shown('a6')
  const small = await saved()
  expect(small).toContain('297.64 x 419.53')
  expect(small).toContain(en.papers.drawnAgain)
})

test('the page is clear to axe and fits 320 px', async () => {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .exclude('iframe')
    .analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(node => node.target.join(' '))}`)).toEqual([])
  await page.setViewportSize({ width: 320, height: 800 })
  const { scrollWidth, clientWidth } = await page.evaluate(() => ({
    scrollWidth: document.documentElement.scrollWidth,
    clientWidth: document.documentElement.clientWidth,
  }))
  expect(scrollWidth).toBe(clientWidth)
})

test('a paper whose file was damaged is named on its page, and still shown', async () => {
  const folder = folderBeside(shop.ledger, 'papers')
  const hash =
    (await itself()
      .getByText(/^[0-9a-f]{64}$/)
      .textContent()) ?? ''
  const name = readdirSync(folder, { recursive: true, encoding: 'utf8' }).find(one => one.includes(hash))
  writeFileSync(join(folder, name ?? ''), 'other bytes')
  await page.reload()
  await expect(itself().getByText(onPage.damaged)).toBeVisible()
  await shown('a4')
})
