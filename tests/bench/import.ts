import { readFileSync } from 'node:fs'
import { chromium, type Page } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { browserPath, quiet } from '../e2e/browser.ts'
import buildFirst from '../e2e/build.ts'
import { type StartedShop, startShop } from '../e2e/start-shop.ts'
import { rounded } from './measure.ts'

const { listImport: say, screens } = en
const rows = 100_000
const minutes = 60_000

const line = (n: number): string =>
  [
    `Zoë Ångström ${n}`,
    `020 7${String(n).padStart(7, '0')}`,
    n % 10 === 0 ? `"${n} Weir Lane\r\nOrrinford"` : `${n} Weir Lane`,
    'mantel',
    // A maker that the demonstration shop does not have: every line is new to it.
    'Ashwick & Lorn',
    `AL ${n}`,
  ].join(';')

/** An invented shop's list: semicolons, accents, an address in ten broken over two lines inside its quotes. */
const listText = (from: number): string =>
  [
    'Name;Phone;Address;Clock type;Maker;Serial no.',
    ...Array.from({ length: rows }, (_, i) => line(from + i)),
  ].join('\r\n')

const forms: Readonly<Record<string, () => Buffer>> = {
  'windows-1252': () => Buffer.from(listText(0), 'latin1'),
  'utf-8 with mark': () => Buffer.from(`\uFEFF${listText(rows)}`, 'utf8'),
}

const mega = (bytes: number): number => Math.round(bytes / 1_000_000)

/** The most the host ever held, in megabytes; null where the system does not tell (it does on Linux). */
function hostPeakMb({ process: { pid } }: StartedShop): number | null {
  try {
    const kilobytes = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]
    return kilobytes === undefined ? null : mega(Number(kilobytes) * 1024)
  } catch {
    return null
  }
}

/** What the page's own objects hold once the collector has run, in megabytes. */
async function pageHeapMb(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page)
  await session.send('HeapProfiler.collectGarbage')
  const { usedSize } = await session.send('Runtime.getHeapUsage')
  await session.detach()
  return mega(usedSize)
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now()
  await work()
  return rounded((performance.now() - from) / 1000)
}

/** From the chosen file to everything entered, as a person does it; seconds for each step. */
async function entered(page: Page, origin: string, buffer: Buffer) {
  await page.goto(`${origin}/register/import`)
  const readS = await timed(async () => {
    await page.getByLabel(say.choose).setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer })
    await page.getByText(say.found(rows)).waitFor()
  })
  const stoppedS = await timed(async () => {
    await page.getByRole('button', { name: say.check }).click()
    await page.getByRole('progressbar').waitFor()
    await page.getByRole('button', { name: say.stop }).click()
    await page.getByText(say.stopped).waitFor()
  })
  const checkS = await timed(async () => {
    await page.getByRole('button', { name: say.check }).click()
    await page.getByRole('button', { name: say.enter(rows) }).waitFor()
  })
  const heapMb = await pageHeapMb(page)
  const enterS = await timed(async () => {
    await page.getByRole('button', { name: say.enter(rows) }).click()
    await page
      .getByRole('dialog')
      .getByRole('button', { name: say.enter(rows) })
      .click()
    await page.getByRole('heading', { level: 1, name: screens.pages.register }).waitFor()
  })
  return { fileMb: mega(buffer.length), readS, stoppedS, checkS, enterS, pageHeapMb: heapMb }
}

/** A list of 100,000 owners and clocks from a file, in a real browser: seconds for each step, and what page and host hold. */
export async function importing() {
  await buildFirst()
  const browser = await chromium.launch({ executablePath: browserPath(), args: [...quiet] })
  const shop = await startShop({ demo: true })
  try {
    const page = await browser.newPage()
    page.setDefaultTimeout(10 * minutes)
    await page.goto(shop.url)
    const asked = page.getByRole('dialog', { name: screens.who.ask })
    await page.addLocatorHandler(asked, () => asked.getByRole('button').first().click())
    const results: Record<string, object> = {}
    for (const [name, make] of Object.entries(forms)) results[name] = await entered(page, shop.origin, make())
    return { rows, ...results, hostPeakMb: hostPeakMb(shop) }
  } finally {
    await browser.close()
    await shop.close()
  }
}
