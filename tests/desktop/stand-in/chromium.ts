import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { type BrowserContext, chromium, type Page } from '@playwright/test'
import { browserPath, quiet } from '../../e2e/browser.ts'
import { note } from './notes.ts'

/** A browser that both the stand-in and the test are connected to. */
async function openBrowser(): Promise<string> {
  const profile = join(process.env.STAND_IN_USER_DATA ?? '', 'chromium')
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : []
  const looks = ['--headless', '--lang=en-GB', '--window-size=1280,860']
  const args = [...looks, ...asRoot, ...quiet, '--remote-debugging-port=0', `--user-data-dir=${profile}`]
  const child = spawn(browserPath(), [...args, 'about:blank'], {
    env: { ...process.env, TZ: 'Europe/London' },
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  process.once('exit', () => child.kill('SIGKILL'))
  for (let said = ''; ; ) {
    const [piece] = await once(child.stderr, 'data')
    said += piece
    const address = /ws:\/\/\S+/.exec(said)?.[0]
    if (address) return address
  }
}

/** The page that stands for the window's contents, in a browser whose address is noted for the test. */
export async function openPage(): Promise<{ context: BrowserContext; page: Page }> {
  const address = await openBrowser()
  const browser = await chromium.connectOverCDP(address)
  const context = browser.contexts()[0] ?? (await browser.newContext())
  const page = context.pages()[0] ?? (await context.newPage())
  note('browser', address)
  return { context, page }
}
