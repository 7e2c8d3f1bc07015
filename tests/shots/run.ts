import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { type Browser, chromium, type Page } from '@playwright/test'
import { places } from '../../electron/places.ts'
import { browserPath, quiet } from '../e2e/browser.ts'
import { startShop } from '../e2e/start-shop.ts'

const folder = join(places.root, 'assets/screens')

/** One picture: its name, the page it shows, and what is done there first. */
interface Shot {
  readonly name: string
  readonly path: string
  readonly lamp?: boolean
  readonly first?: (page: Page) => Promise<unknown>
}

const shots: readonly Shot[] = [
  { name: 'counter', path: '/counter' },
  { name: 'counter-lamp', path: '/counter', lamp: true },
  {
    name: 'find',
    path: '/counter',
    first: page => page.getByRole('combobox').first().pressSequentially('pell'),
  },
  { name: 'take-in', path: '/counter/take-in' },
  { name: 'repair', path: '/counter/2203' },
  { name: 'bench', path: '/bench' },
  { name: 'bench-card', path: '/bench/2212' },
  { name: 'shelf', path: '/shelf' },
  { name: 'shelf-lamp', path: '/shelf', lamp: true },
  { name: 'shelf-carriage', path: '/shelf/2207' },
  { name: 'shelf-torsion', path: '/shelf/2205' },
  { name: 'where', path: '/shelf/where' },
  { name: 'figures', path: '/accounts/figures?from=2027-01-01&to=2027-12-31' },
  { name: 'accounts', path: '/accounts' },
  {
    name: 'paper',
    path: '/accounts/paper/1',
    first: page => page.waitForTimeout(3000), // the browser’s own viewer draws the paper and says nothing of it
  },
  { name: 'stores', path: '/stores' },
  { name: 'register', path: '/register' },
  { name: 'shop', path: '/shop' },
]

async function take(
  browser: Browser,
  url: string,
  { name, path, lamp, first }: Shot,
  state: string,
): Promise<void> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    colorScheme: lamp ? 'dark' : 'light',
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    storageState: state,
  })
  const page = await context.newPage()
  await page.goto(new URL(path, url).href)
  await page.getByRole('heading', { level: 1 }).waitFor()
  await page.waitForLoadState('networkidle')
  await first?.(page)
  await page.waitForTimeout(300) // what was typed is answered and painted
  await page.screenshot({ path: join(folder, `${name}.png`) })
  await context.close()
}

/** `npm run shots`: pictures of the demonstration shop's pages into assets/screens. */
async function main(): Promise<void> {
  mkdirSync(folder, { recursive: true })
  const shop = await startShop({ demo: true })
  const browser = await chromium.launch({ executablePath: browserPath(), args: [...quiet] })
  try {
    const state = join(places.root, 'test-results', 'shots-state.json')
    const door = await browser.newContext()
    await (await door.newPage()).goto(shop.url)
    await door.storageState({ path: state })
    await door.close()
    for (const shot of shots) await take(browser, shop.origin, shot, state)
    console.log(`${shots.length} pictures in ${folder}`)
  } finally {
    await browser.close()
    await shop.close()
  }
}

await main()
