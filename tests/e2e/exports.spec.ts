import { readFileSync } from 'node:fs'
import { AxeBuilder } from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { demoIn, type StartedShop } from './start-shop.ts'

let shop: StartedShop
let page: Page
test.beforeAll(async ({ browser }) => {
  ;[shop, page] = await demoIn(browser)
  await page.getByLabel(en.screens.who.label).selectOption('Ines Marrow')
})
test.afterAll(() => shop.close())

test('the books can be taken out from the day book by keyboard, clear to axe and at 320 px', async () => {
  await page.goto(`${shop.origin}/accounts/day-book`)
  const section = page.getByRole('region', { name: 'Take the books out' })
  for (const [name, file, begins] of [
    ['owners', 'owners.csv', 'id,name,address'],
    ['journal for plain-text accounting', 'books.journal', 'decimal-mark .'],
    ['dates for a calendar (iCalendar)', 'dates.ics', 'BEGIN:VCALENDAR'],
    ['owners for an address book (vCard)', 'owners.vcf', 'BEGIN:VCARD'],
  ] as const) {
    const downloading = page.waitForEvent('download')
    await section.getByRole('link', { name, exact: true }).press('Enter')
    const download = await downloading
    expect(download.suggestedFilename()).toBe(file)
    expect(readFileSync(await download.path(), 'utf8')).toMatch(new RegExp(`^${begins.replace('.', '\\.')}`))
  }
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze()
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(node => node.target.join(' ')).join(' | ')}`),
  ).toEqual([])
  await page.setViewportSize({ width: 320, height: 800 })
  const { scrollWidth, clientWidth } = await page.evaluate(() => ({
    scrollWidth: document.documentElement.scrollWidth,
    clientWidth: document.documentElement.clientWidth,
  }))
  expect(scrollWidth).toBe(clientWidth)
})

test('the tax of the period shown is saved as a table of that period', async () => {
  await page.goto(`${shop.origin}/accounts/tax?from=2027-02-01&to=2027-03-31`)
  const downloading = page.waitForEvent('download')
  await page.getByRole('link', { name: 'This period as a table (CSV)' }).click()
  const download = await downloading
  expect(download.suggestedFilename()).toBe('tax-2027-02-01-2027-03-31.csv')
  expect(readFileSync(await download.path(), 'utf8')).toContain(
    '2027-02-01,2027-03-31,invoice,VAT,20,labour,',
  )
})
