import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { type Browser, chromium, type Page } from '@playwright/test'
import { pageNames } from '../../renderer/pages.ts'
import { browserPath, quiet } from '../e2e/browser.ts'
import buildFirst from '../e2e/build.ts'
import { type StartedShop, startShop } from '../e2e/start-shop.ts'
import { at } from './measure.ts'
import { keptLedger } from './twenty-years.ts'

const typed = [
  'pell',
  'quillf',
  '2071000',
  'rosamund p',
  'ol-1044',
  'tarn',
  'okafor',
  '3999',
  'bracket',
  'brandeis',
]

/** Notes, in the page, how long each letter takes until what it finds has been painted. */
function watchFind(): void {
  const times: number[] = []
  Reflect.set(window, 'foundAfterMs', times)
  const settled = () =>
    [...document.querySelectorAll('.find [role=status], .find .nothing')].some(
      words => words.textContent !== '',
    )
  // The frame that shows it has been handed over once the task after it runs.
  const painted = (from: number) =>
    requestAnimationFrame(() => setTimeout(() => times.push(performance.now() - from)))
  const watch = (from: number) => {
    if (settled()) return void painted(from)
    const seen = new MutationObserver(() => {
      if (!settled()) return
      seen.disconnect()
      painted(from)
    })
    seen.observe(document.body, { childList: true, subtree: true, characterData: true })
  }
  addEventListener('input', event => queueMicrotask(() => watch(event.timeStamp)))
}

const timesSoFar = (page: Page) => page.evaluate(() => Reflect.get(window, 'foundAfterMs') as number[])

/** From each letter typed into the find box to the painted lines it finds, in milliseconds. */
async function keyToPaint(page: Page, url: string): Promise<number[]> {
  await page.addInitScript(watchFind)
  await page.goto(url)
  const box = page.getByRole('combobox').first()
  for (const text of typed) {
    await box.fill('')
    const before = (await timesSoFar(page)).length
    for (const [index, letter] of [...text].entries()) {
      await box.press(letter === ' ' ? 'Space' : letter)
      await page.waitForFunction(
        count => (Reflect.get(window, 'foundAfterMs') as number[]).length > count,
        before + index,
      )
    }
  }
  return (await timesSoFar(page)).slice(typed[0]?.length)
}

/** A page is usable once its heading and its find box stand there. */
async function usable(page: Page): Promise<void> {
  await page.getByRole('heading', { level: 1 }).waitFor()
  await page.getByRole('combobox').first().waitFor()
}

/** From the start command to a usable page, in milliseconds. */
async function startMs(browser: Browser, ledger: string): Promise<number> {
  const from = performance.now()
  const shop = await startShop({ ledger })
  const page = await browser.newPage()
  try {
    await page.goto(shop.url)
    await usable(page)
    return performance.now() - from
  } finally {
    await page.close()
    await shop.close()
  }
}

const starts = 7

/** Starts with the twenty-year ledger and with an empty one in turn (target: at most 1.2 times as long). */
async function starting(browser: Browser, whole: string, empty: string) {
  const times: [number[], number[]] = [[], []]
  for (let n = -1; n < starts; n++)
    for (const [which, ledger] of [whole, empty].entries()) {
      const ms = await startMs(browser, ledger)
      if (n >= 0) times[which]?.push(ms)
    }
  const [wholeMs, emptyMs] = [at(times[0], 0.5), at(times[1], 0.5)]
  return { wholeMs, emptyMs, ratio: wholeMs / emptyMs, kept: wholeMs <= 1.2 * emptyMs }
}

const built = join(import.meta.dirname, '../../dist/client')

/** The kilobytes of script and style, gzipped, that each page asks for (target: at most 250). */
async function bundles(page: Page, { origin }: StartedShop) {
  const sizes: Record<string, number> = {}
  for (const name of pageNames) {
    await page.goto(`${origin}/${name}`)
    await usable(page)
    const files = await page.evaluate(() =>
      performance
        .getEntriesByType('resource')
        .map(({ name: address }) => new URL(address).pathname)
        .filter(path => /\.(js|css)$/.test(path)),
    )
    const bytes = files.reduce((sum, path) => sum + gzipSync(readFileSync(join(built, path))).length, 0)
    sizes[name] = Math.round(bytes / 100) / 10
  }
  return { gzipKb: sizes, kept: Math.max(...Object.values(sizes)) <= 250 }
}

/** What a person waits for, in a real browser on twenty years of ledger: find as you type, the start; and how much each page fetches. */
export async function browser() {
  await buildFirst()
  const [whole, empty] = [await keptLedger(1), await keptLedger(0)]
  const opened = await chromium.launch({ executablePath: browserPath(), args: [...quiet] })
  try {
    const started = await starting(opened, whole, empty)
    const shop = await startShop({ ledger: whole })
    try {
      const page = await opened.newPage()
      const times = await keyToPaint(page, shop.url)
      const sizes = await bundles(page, shop)
      const p95Ms = at(times, 0.95)
      return {
        keyToPaint: { keys: times.length, medianMs: at(times, 0.5), p95Ms, ceilingMs: 50, kept: p95Ms <= 50 },
        start: started,
        bundle: sizes,
      }
    } finally {
      await shop.close()
    }
  } finally {
    await opened.close()
  }
}
