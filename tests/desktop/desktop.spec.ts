import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { expect, test } from '@playwright/test'
import { start } from '../../core/words/en/start.ts'
import type { Bridge, MenuCommand } from '../../electron/bridge.ts'
import { type Desktop, type DesktopAsked, openDesktop } from './open-desktop.ts'

const opened: Desktop[] = []

const open = (asked: DesktopAsked = {}) => {
  const desktop = openDesktop(asked)
  opened.push(desktop)
  return desktop
}

test.afterEach(async () => {
  for (const desktop of opened.splice(0)) await desktop.close()
})

/** The bridge as the pages see it. */
declare const window: Window & {
  readonly countwheel: Bridge
  readonly standInInvoke: (channel: string) => Promise<unknown>
  heard: MenuCommand[]
}

test.describe('the window', () => {
  test('shows the ledger’s own pages on its own scheme, without a complaint of the content policy', async () => {
    const desktop = open()
    const page = await desktop.page()
    const complaints: string[] = []
    page.on('console', message => complaints.push(message.text()))
    await page.reload()
    await expect(page.locator('#root')).not.toBeEmpty()
    expect(complaints.filter(text => /Content Security Policy/.test(text))).toEqual([])
    expect(desktop.notes('schemes')).toEqual([
      [{ scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } }],
    ])
  })

  test('keeps its pages in a sandbox, apart from the preload, without Node', async () => {
    const desktop = open()
    const page = await desktop.page()
    expect(desktop.notes('window')).toMatchObject([
      {
        webPreferences: { contextIsolation: true, sandbox: true, nodeIntegration: false, webviewTag: false },
      },
    ])
    expect(await page.evaluate(() => [typeof globalThis.process, 'require' in globalThis])).toEqual([
      'undefined',
      false,
    ])
  })

  test('denies every permission', async () => {
    const desktop = open()
    await desktop.page()
    for (const what of ['permission request', 'permission check', 'device permission']) {
      expect(desktop.notes(what)).toEqual([false])
    }
  })

  test('stays on the ledger, whatever a page asks for', async () => {
    const desktop = open()
    const page = await desktop.page()
    await page.evaluate(() => window.location.assign('https://elsewhere.test/'))
    await expect.poll(() => desktop.notes('kept away')).toEqual(['https://elsewhere.test/'])
    await page.evaluate(() => {
      document.body.innerHTML = '<a href="https://elsewhere.test/new" target="_blank">elsewhere</a>'
    })
    await page.getByRole('link').click()
    await expect
      .poll(() => desktop.notes('window open'))
      .toEqual([{ url: 'https://elsewhere.test/new', action: 'deny' }])
    expect(page.url()).toMatch(/^http:\/\/app-ledger\.localhost\//)
  })

  test('is the only one: a second start ends and says where the first one is', async () => {
    const first = open()
    await first.page()
    const second = open({ ledger: first.ledger, second: true })
    expect(await second.ended()).toBe(3)
    expect(second.said()).toContain(start.heldInWindow({ file: first.ledger }))
    expect(first.notes('focus')).toHaveLength(1)
    const other = open({ second: true })
    expect(await other.ended()).toBe(3)
    expect(other.said()).toContain(start.otherWindow)
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
    const desktop = open()
    const page = await desktop.page()
    await page.evaluate(() => {
      window.heard = []
      window.countwheel.onMenu(command => window.heard.push(command))
    })
    for (const [keys, command] of Object.entries(shortcuts)) {
      desktop.press(keys)
      await expect.poll(() => page.evaluate(() => window.heard.at(-1)), keys).toBe(command)
    }
  })

  test('prints the page', async () => {
    const desktop = open()
    await desktop.page()
    desktop.press('CmdOrCtrl+P')
    await expect.poll(() => desktop.notes('print')).toHaveLength(1)
  })

  test('a page that no longer listens is told nothing', async () => {
    const desktop = open()
    const page = await desktop.page()
    await page.evaluate(() => {
      window.heard = []
      window.countwheel.onMenu(() => window.heard.push('shop'))()
      window.countwheel.onMenu(command => window.heard.push(command))
    })
    desktop.press('CmdOrCtrl+F')
    await expect.poll(() => page.evaluate(() => window.heard)).toEqual(['find'])
  })
})

test.describe('the bridge', () => {
  test('shows the ledger’s file in its folder', async () => {
    const desktop = open()
    const page = await desktop.page()
    await page.evaluate(() => window.countwheel.openLedgerFolder())
    expect(desktop.notes('show in folder')).toEqual([desktop.ledger])
  })

  test('reaches papers only: nothing else of the ledger and no file of the computer', async () => {
    const saveAs = test.info().outputPath('never.pdf')
    const desktop = open({ saveAs })
    const page = await desktop.page()
    const paths = [
      '/api/find',
      '/papers/../api/find.pdf',
      'file:///etc/passwd',
      '//elsewhere.test/a.pdf',
      '',
      '/papers/0.pdf',
    ]
    for (const path of paths) {
      expect(await page.evaluate(given => window.countwheel.savePaper(given), path), path).toBe('failed')
      expect(await page.evaluate(given => window.countwheel.printPaper(given), path), path).toBe('failed')
    }
    expect(desktop.notes('open path')).toEqual([])
    expect(existsSync(saveAs)).toBe(false)
  })

  test('does not answer a frame inside the page', async () => {
    const desktop = open()
    const page = await desktop.page()
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

  test('is the preload’s work: with a broken one there is none', async () => {
    const preload = test.info().outputPath('preload.cjs')
    writeFileSync(preload, 'require("node:fs")')
    const desktop = open({ preload })
    const page = await desktop.page()
    expect(await page.evaluate(() => typeof window.countwheel)).toBe('undefined')
  })
})

test.describe('the end', () => {
  const isClosedCleanly = (ledger: string) => {
    expect(existsSync(`${ledger}-wal`)).toBe(false)
    expect(statSync(ledger).size).toBeGreaterThan(0)
    expect(readFileSync(ledger).subarray(0, 15).toString()).toBe('SQLite format 3')
  }

  test('closing the window closes the ledger’s file cleanly', async () => {
    const desktop = open()
    const page = await desktop.page()
    await page.close()
    expect(await desktop.ended()).toBe(0)
    isClosedCleanly(desktop.ledger)
    expect(desktop.said()).toBe('')
  })

  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    test(`${signal} closes the ledger’s file cleanly`, async () => {
      const desktop = open()
      await desktop.page()
      expect(existsSync(`${desktop.ledger}-wal`)).toBe(true)
      desktop.process.kill(signal)
      expect(await desktop.ended()).toBe(0)
      isClosedCleanly(desktop.ledger)
    })
  }

  test('a file that is no ledger is refused in a sentence and left as it is', async () => {
    const ledger = test.info().outputPath('letter.countwheel')
    writeFileSync(ledger, 'Dear owner, your clock is ready.')
    const desktop = open({ ledger })
    expect(await desktop.ended()).toBe(3)
    expect(desktop.notes('error box')).toHaveLength(1)
    expect(desktop.said()).not.toContain(' at ')
    expect(readFileSync(ledger, 'utf8')).toBe('Dear owner, your clock is ready.')
  })
})
