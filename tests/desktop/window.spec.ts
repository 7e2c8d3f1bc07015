import { expect, type Page, test } from '@playwright/test'
import type { Bridge, MenuCommand } from '../../electron/desktop/bridge.ts'
import { type Desktop, openDesktop } from './open-desktop.ts'

/** The bridge as the pages see it, and what a test keeps beside it. */
declare const window: Window & {
  readonly countwheel: Bridge
  readonly standInInvoke: (channel: string) => Promise<unknown>
  heard: MenuCommand[]
}

let desktop: Desktop
let page: Page
let first: string

test.beforeAll(async () => {
  desktop = openDesktop()
  page = await desktop.page()
  first = page.url()
})
test.afterAll(() => desktop.close())
test.beforeEach(async () => {
  await page.goto(first)
})

test.describe('the window', () => {
  test('is made with a sandbox, apart from the preload, without Node and without a single permission', async () => {
    expect(desktop.notes('schemes')).toEqual([
      [{ scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } }],
    ])
    expect(desktop.notes('window')).toMatchObject([
      {
        webPreferences: { contextIsolation: true, sandbox: true, nodeIntegration: false, webviewTag: false },
      },
    ])
    for (const what of ['permission request', 'permission check', 'device permission']) {
      expect(desktop.notes(what)).toEqual([false])
    }
  })

  test('shows the ledger’s own pages without a complaint of the content policy', async () => {
    const complaints: string[] = []
    page.on('console', message => complaints.push(message.text()))
    await page.reload()
    await expect(page.locator('#root')).not.toBeEmpty()
    expect(complaints.filter(text => /Content Security Policy/.test(text))).toEqual([])
  })

  test('stays on the ledger, whatever a page asks for', async () => {
    await page.evaluate(() => window.location.assign('https://elsewhere.test/'))
    await expect.poll(() => desktop.notes('kept away')).toContain('https://elsewhere.test/')
    await page.evaluate(() => {
      document.body.innerHTML = '<a href="https://elsewhere.test/new" target="_blank">elsewhere</a>'
    })
    await page.getByRole('link').click()
    await expect
      .poll(() => desktop.notes('window open'))
      .toContainEqual({ url: 'https://elsewhere.test/new', action: 'deny' })
    expect(page.url()).toMatch(/^http:\/\/app-ledger\.localhost\//)
  })
})

test.describe('the menu', () => {
  const shortcuts = {
    'CmdOrCtrl+1': 'counter',
    'CmdOrCtrl+2': 'bench',
    'CmdOrCtrl+3': 'shelf',
    'CmdOrCtrl+4': 'accounts',
    'CmdOrCtrl+5': 'stores',
    'CmdOrCtrl+6': 'register',
    'CmdOrCtrl+7': 'shop',
    'CmdOrCtrl+F': 'find',
    'CmdOrCtrl+Shift+L': 'theme',
  }

  test('turns to the pages, to the find box and changes the light by keys', async () => {
    await page.evaluate(() => {
      window.heard = []
      window.countwheel.onMenu(command => window.heard.push(command))
    })
    for (const [keys, command] of Object.entries(shortcuts)) {
      desktop.press(keys)
      await expect.poll(() => page.evaluate(() => window.heard.at(-1)), keys).toBe(command)
    }
  })

  test('a page that no longer listens is told nothing', async () => {
    await page.evaluate(() => {
      window.heard = []
      window.countwheel.onMenu(() => window.heard.push('shop'))()
      window.countwheel.onMenu(command => window.heard.push(command))
    })
    desktop.press('CmdOrCtrl+F')
    await expect.poll(() => page.evaluate(() => window.heard)).toEqual(['find'])
  })

  test('prints the page', async () => {
    desktop.press('CmdOrCtrl+P')
    await expect.poll(() => desktop.notes('print')).toHaveLength(1)
  })
})

test.describe('the bridge', () => {
  test('does not answer a frame inside the page', async () => {
    const outcome = await page.evaluate(async () => {
      const frame = document.createElement('iframe')
      document.body.append(frame)
      const inside = frame.contentWindow as typeof window | null
      return inside?.standInInvoke('countwheel:open-ledger-folder').then(
        () => 'answered',
        (error: Error) => error.message,
      )
    })
    expect(outcome).toContain('not from the ledger’s window')
    expect(desktop.notes('show in folder')).toEqual([])
  })

  test('shows the ledger’s file in its folder', async () => {
    await page.evaluate(() => window.countwheel.openLedgerFolder())
    expect(desktop.notes('show in folder')).toEqual([desktop.ledger])
  })
})
