import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { text } from 'node:stream/consumers'
import type { Browser, Page } from '@playwright/test'
import { places } from '../../electron/places.ts'

/** Which ledger the started shop has; a fresh empty one where nothing is said. */
export interface ShopAsked {
  /** The demonstration shop in a fresh ledger. */
  readonly demo?: boolean
  /** A ledger file to open, or to make; it is left where it is. */
  readonly ledger?: string
  /** As a person starts it, who is asked where the ledger cannot be opened; on a computer without a display. */
  readonly asks?: boolean
}

/** A shop served by the real start command in a process of its own. */
export interface StartedShop {
  /** The printed address, with its key: good for one browser. */
  readonly url: string
  /** The address without key or page, as in `http://127.0.0.1:4812`. */
  readonly origin: string
  /** The run's key, for `Authorization: Bearer`. */
  readonly key: string
  readonly ledger: string
  readonly process: ChildProcess
  /** Asks the command to end and waits for it; throws when it does not end well. */
  close(): Promise<void>
}

const startProgram = join(places.root, 'electron/commands/start.ts')

/** The printed address, or the command's own words where it ends without one. */
async function printedAddress(child: ChildProcess): Promise<string> {
  const { stdout, stderr } = child
  if (!stdout || !stderr) throw new Error('the start command has no output to read')
  const words = text(stderr)
  for await (const piece of stdout.iterator({ destroyOnReturn: false })) {
    const address = /http:\/\/127\.0\.0\.1:\d+\/\?key=[\w-]+/.exec(String(piece))?.[0]
    if (address) return address
  }
  throw new Error(`the start command printed no address: ${await words}`)
}

async function end(child: ChildProcess): Promise<void> {
  if (child.exitCode === null && child.signalCode === null) {
    child.kill('SIGTERM')
    await once(child, 'exit')
  }
  if (child.exitCode !== 0)
    throw new Error(`the start command ended with ${child.exitCode ?? child.signalCode}`)
}

/** Starts a shop on a free port; whoever starts it closes it. */
export async function startShop({
  demo = false,
  ledger,
  asks = false,
}: ShopAsked = {}): Promise<StartedShop> {
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-shop-'))
  const file = ledger ?? join(folder, 'shop.countwheel')
  const how = [...(asks ? [] : ['--no-open']), ...(demo ? ['--demo'] : [])]
  const args = [startProgram, ...how, '--port', '0', '--ledger', file]
  const env = { ...process.env, DISPLAY: '', WAYLAND_DISPLAY: '' }
  const child = spawn(process.execPath, args, { cwd: places.root, env, stdio: ['ignore', 'pipe', 'pipe'] })
  const url = await printedAddress(child)
  const { origin, searchParams } = new URL(url)
  const close = () => end(child).finally(() => rmSync(folder, { recursive: true, force: true }))
  return { url, origin, key: searchParams.get('key') ?? '', ledger: file, process: child, close }
}

/** The demonstration shop, fresh, and a page of a browser that it has let in. */
export async function demoIn(browser: Browser): Promise<[StartedShop, Page]> {
  const shop = await startShop({ demo: true })
  const page = await (await browser.newContext()).newPage()
  // The printed address lets in one browser, once.
  await page.goto(shop.url)
  return [shop, page]
}
