import { chromium, type Page } from '@playwright/test'
import Database from 'better-sqlite3'
import { browserPath, quiet } from '../e2e/browser.ts'
import { startShop } from '../e2e/start-shop.ts'
import { workLedger } from '../e2e/work-shop.ts'

const dayMs = 86_400_000
const readings = 1000
const days = 400
const ceilingMs = 100

/** A year and more of readings of one torsion clock, written beside what the run already has. */
function longLog(file: string): void {
  const db = new Database(file)
  const from = Date.now() - (days + 1) * dayMs
  const put = db.prepare(
    'INSERT INTO readings (run_id, at, entered_at, error_ms, wound) VALUES (1, @at, @at, @errorMs, 0)',
  )
  db.prepare("UPDATE clocks SET duration = '400-day', form = 'torsion' WHERE id = 1").run()
  db.transaction(() => {
    for (let n = 0; n < readings; n++) {
      const at = new Date(from + (n * days * dayMs) / readings).toISOString()
      put.run({ at, errorMs: Math.round(n * 900 + 4000 * Math.sin(n * 12.9)) })
    }
  })()
  db.close()
}

/** Notes, in the page, when the chart's line first stands there and the frame after it has been painted. */
function watchChart(): void {
  const seen = new MutationObserver(() => {
    if (!document.querySelector('svg polyline.readings')) return
    seen.disconnect()
    requestAnimationFrame(() => setTimeout(() => Reflect.set(window, 'chartPaintedAt', performance.now())))
  })
  seen.observe(document, { childList: true, subtree: true })
}

/** Milliseconds from the log's arrival in the page to its painted chart. */
async function paintedMs(page: Page, url: string): Promise<number> {
  await page.goto(url)
  await page.waitForFunction(() => Reflect.has(window, 'chartPaintedAt'))
  return page.evaluate(() => {
    const [log] = performance
      .getEntriesByType('resource')
      .filter(({ name }) => name.includes('/api/pages/runs/'))
    return Number(Reflect.get(window, 'chartPaintedAt')) - (log as PerformanceResourceTiming).responseEnd
  })
}

/** How long the chart of a 400-day log of a thousand readings takes to be painted once its log is there. */
export async function chart() {
  const work = await workLedger(1, days + 2)
  longLog(work.file)
  const shop = await startShop({ ledger: work.file })
  const browser = await chromium.launch({ executablePath: browserPath(), args: [...quiet] })
  try {
    const page = await browser.newPage()
    await page.goto(shop.url)
    await page.addInitScript(watchChart)
    const times: number[] = []
    for (let n = 0; n < 12; n++) times.push(await paintedMs(page, new URL('/shelf/2201', shop.url).href))
    const sorted = times.slice(2).sort((a, b) => a - b)
    const [medianMs, p95Ms] = [sorted[5] ?? 0, sorted.at(-1) ?? 0]
    return { readings, medianMs, p95Ms, ceilingMs, kept: p95Ms <= ceilingMs }
  } finally {
    await browser.close()
    await shop.close()
    work.remove()
  }
}
