import { type Browser, expect, type Page, test } from '@playwright/test'
import { clearToAxe } from './clear-to-axe.ts'
import { type StartedShop, startShop } from './start-shop.ts'

const paths = [
  '/counter',
  '/counter/take-in',
  '/counter/2201',
  '/counter/2203',
  '/counter/2204',
  '/counter/take-in?comeback=2210',
  '/counter/2203/invoice',
  '/counter/2203/tell-owner',
  '/counter/2208/record-word',
  '/counter/2209/hand-over',
  '/counter/2211/decide-cover',
  '/counter/2212/estimated-date',
  '/counter/2212/note',
  '/counter/2214/write-estimate',
  '/bench',
  '/bench/2212',
  '/bench/2204',
  '/shelf',
  '/shelf/2212',
  '/shelf/where',
  '/accounts',
  '/accounts/figures?from=2027-01-01&to=2027-12-31',
  '/stores',
  '/register',
  '/register/owner/1',
  '/register/owner/1/change',
  '/register/owner/1/contact',
  '/register/owner/1/merge',
  '/register/new-owner',
  '/register/import',
  '/register/clock/1',
  '/register/clock/1/change',
  '/register/clock/1/measure',
  '/register/clock/1/pass',
  '/shop',
]

let shop: StartedShop
let state: Awaited<ReturnType<Awaited<ReturnType<Browser['newContext']>>['storageState']>>
test.beforeAll(async ({ browser }) => {
  shop = await startShop({ demo: true })
  const door = await browser.newContext()
  await (await door.newPage()).goto(shop.url)
  state = await door.storageState()
  await door.close()
})
test.afterAll(() => shop.close())

/** A page open in a window of its own, and everything the browser complained of since. */
async function opened(browser: Browser, path: string) {
  const context = await browser.newContext({
    storageState: state,
    colorScheme: 'light',
    reducedMotion: 'reduce',
    viewport: { width: 1280, height: 800 },
  })
  const page = await context.newPage()
  const complaints: string[] = []
  page.on('console', message => {
    if (message.type() === 'error') complaints.push(message.text())
  })
  page.on('pageerror', error => complaints.push(String(error)))
  await page.goto(shop.origin + path)
  await page.getByRole('heading', { level: 1 }).waitFor()
  await page.waitForLoadState('networkidle')
  return { page, complaints, close: () => context.close() }
}

const overflowOf = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)

// Each page is a test of its own, so that two of them are looked through side by side.
test.describe.configure({ mode: 'parallel' })

for (const path of paths)
  test(`${path} is clear to axe in light and dark and to the browser’s console, and fits 320 px (WCAG 1.4.10)`, async ({
    browser,
  }) => {
    const { page, complaints, close } = await opened(browser, path)
    await clearToAxe(page)
    // In the other light only colours are others.
    await page.emulateMedia({ colorScheme: 'dark' })
    await clearToAxe(page, ['color-contrast'])
    await page.setViewportSize({ width: 320, height: 800 })
    expect(await overflowOf(page)).toBe(0)
    expect(complaints).toEqual([])
    expect(await page.getByText('There is no such page').count()).toBe(0)
    await close()
  })
