import { readFileSync, writeFileSync } from 'node:fs'
import { AxeBuilder } from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { keptPaperPath } from '../../db/rows/kept-papers.ts'
import { demoIn, type StartedShop } from './start-shop.ts'

const { onPage, copies } = en.papers
let shop: StartedShop
let page: Page

test.beforeAll(async ({ browser }) => {
  ;[shop, page] = await demoIn(browser)
})
test.afterAll(() => shop.close())

const itself = () => page.getByRole('region', { name: onPage.section })
const said = () => page.locator('.said')
const listed = () => page.getByRole('region', { name: copies.title }).getByRole('listitem')

/** The paper shown, as it is saved. */
async function saved(): Promise<{ name: string; bytes: Buffer }> {
  const downloading = page.waitForEvent('download')
  await itself()
    .getByRole('link', { name: /^Save / })
    .press('Enter')
  const download = await downloading
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) }
}

test('a working paper is opened on its page, a size chosen, and what the owner is given kept to the byte, by keyboard', async () => {
  await page.goto(`${shop.origin}/counter/2202`)
  await page.getByRole('link', { name: 'Ready letter' }).press('Enter')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Ready letter 2202')
  await expect(page.getByText(copies.none)).toBeVisible()
  await itself().getByRole('radio', { name: 'A4' }).press('ArrowRight')
  await expect(itself().getByRole('radio', { name: 'Letter' })).toBeChecked()
  const given = await saved()
  expect(given.name).toBe('ready-letter-2202.pdf')
  await itself().getByRole('button', { name: copies.keep }).press('Enter')
  const who = page.getByRole('dialog').getByRole('button', { name: 'Ines Marrow' })
  await who.press('Enter')
  await expect(said()).toContainText(copies.kept('Ready letter 2202'))
  await expect(listed()).toHaveCount(1)
  await expect(listed()).toContainText('Letter · by Ines Marrow')
  await said().getByRole('link', { name: copies.theCopy }).press('Enter')
  await expect(page.getByText(copies.ofCopy('12 Mar 2027'))).toBeVisible()
  await expect(itself().getByText(/^Letter, drawn by Countwheel /)).toBeVisible({ timeout: 60_000 })
  const kept = await saved()
  expect(kept.name).toBe('ready-letter-2202-2027-03-12.pdf')
  expect(kept.bytes.equals(given.bytes)).toBe(true)
})

for (const colorScheme of ['light', 'dark'] as const)
  test(`the copy and the paper it was made of are clear to axe and fit 320 px, ${colorScheme}`, async () => {
    await page.emulateMedia({ colorScheme })
    for (const place of [
      'hand-over/1/2',
      'hand-over/1',
      'tags/1',
      'statement/1?from=2027-01-01&to=2027-03-31',
    ]) {
      await page.setViewportSize({ width: 1280, height: 800 })
      await page.goto(`${shop.origin}/paper/${place}`)
      await expect(itself()).toBeVisible()
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .exclude('iframe')
        .analyze()
      const found = violations.map(({ id, nodes }) => `${id}: ${nodes.map(node => node.target.join(' '))}`)
      expect({ place, found }).toEqual({ place, found: [] })
      await page.setViewportSize({ width: 320, height: 800 })
      const width = await page.evaluate(() => document.documentElement.scrollWidth)
      expect({ place, width }).toEqual({ place, width: 320 })
    }
  })

test('a statement of a period is shown on each size of that period, and a letter that cannot be drawn says why', async () => {
  await page.goto(`${shop.origin}/paper/statement/1?from=2027-01-01&to=2027-03-31`)
  const open = itself().getByRole('link', { name: /^View / })
  await expect(open).toHaveAttribute(
    'href',
    '/papers/of/statement/1.pdf?from=2027-01-01&to=2027-03-31&size=a4',
  )
  await page.goto(`${shop.origin}/paper/ready-letter/1`)
  await expect(itself()).toContainText(en.problems['standing.collected']())
  await expect(page.getByRole('button', { name: copies.keep })).toHaveCount(0)
  await page.goto(`${shop.origin}/paper/ready-letter/1/99`)
  await expect(page.getByText(en.problems['document.unknown']())).toBeVisible()
})

test('a copy whose file was damaged is named in the list and on its page, and still shown from its frozen contents', async () => {
  await page.setViewportSize({ width: 1280, height: 800 })
  await page.goto(`${shop.origin}/paper/hand-over/1/2`)
  const hash = itself().getByText(/^[0-9a-f]{64}$/)
  await expect(hash).toBeVisible({ timeout: 60_000 })
  writeFileSync(keptPaperPath(shop.ledger, (await hash.textContent()) ?? ''), 'other bytes')
  await page.reload()
  await expect(itself().getByText(onPage.damaged)).toBeVisible()
  await expect(listed()).toContainText(copies.states.damaged)
  expect((await saved()).bytes.subarray(0, 5).toString()).toBe('%PDF-')
})
