import { AxeBuilder } from '@axe-core/playwright'
import { type Browser, expect, test } from '@playwright/test'
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

/** The page open in its own light, and everything the browser complained of. */
async function opened(browser: Browser, path: string, colorScheme: 'light' | 'dark', width = 1280) {
  const context = await browser.newContext({
    storageState: state,
    colorScheme,
    viewport: { width, height: 800 },
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

for (const light of ['light', 'dark'] as const)
  test(`every page is clear to axe and to the browser’s console in the ${light} theme`, async ({
    browser,
  }) => {
    test.slow() // every page is looked through whole
    for (const path of paths) {
      const { page, complaints, close } = await opened(browser, path, light)
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze()
      const found = violations.map(v => `${v.id}: ${v.nodes.map(n => n.target.join(' ')).join(' | ')}`)
      expect({ path, found, complaints }).toEqual({ path, found: [], complaints: [] })
      expect(await page.getByText('There is no such page').count(), path).toBe(0)
      await close()
    }
  })

test('every page but its tables fits a window 320 px wide without scrolling sideways (WCAG 1.4.10)', async ({
  browser,
}) => {
  for (const path of paths) {
    const { page, close } = await opened(browser, path, 'light', 320)
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    )
    expect({ path, overflow }).toEqual({ path, overflow: 0 })
    await close()
  }
})
