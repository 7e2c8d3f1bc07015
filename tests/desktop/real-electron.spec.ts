import { existsSync } from 'node:fs'
import { _electron, expect, test } from '@playwright/test'
import { electronBinary, hasDisplay } from '../../electron/commands/start/electron-binary.ts'
import { places } from '../../electron/places.ts'

const binary = electronBinary()

/** Why the real program cannot run here; nothing where it can. */
function reasonToSkip(): string | undefined {
  if (!binary) return 'Electron’s program has not been fetched (npx install-electron fetches it)'
  if (!hasDisplay()) return 'there is no display'
  return undefined
}

const reason = reasonToSkip()
if (reason) console.log(`The real desktop program is not tested here: ${reason}.`)

test.describe('the real desktop program', () => {
  test.skip(reason !== undefined, reason) // only where Electron’s program or a display is missing; printed above

  test('opens the ledger on its own scheme, apart from the preload, and closes its file cleanly', async () => {
    const ledger = test.info().outputPath('shop.countwheel')
    // Chromium refuses its sandbox to root; every other user gets it.
    const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : []
    const program = await _electron.launch({
      ...(binary && { executablePath: binary }),
      args: [
        ...asRoot,
        places.root,
        `--ledger=${ledger}`,
        `--user-data-dir=${test.info().outputPath('user-data')}`,
      ],
    })
    const page = await program.firstWindow()
    await expect(page.locator('#root')).not.toBeEmpty()
    expect(new URL(page.url()).href).toMatch(/^app:\/\/ledger\//)
    const reached = await page.evaluate(async () => ({
      bridge: Object.keys((globalThis as unknown as { countwheel: object }).countwheel).toSorted(),
      node: 'require' in globalThis || 'process' in globalThis,
      api: (await fetch('/api/no-such-thing')).status,
      elsewhere: await fetch('https://elsewhere.test/').then(
        () => 'reached',
        () => 'refused',
      ),
    }))
    expect(reached).toEqual({
      bridge: ['onMenu', 'openLedgerFolder', 'printPaper', 'savePaper'],
      node: false,
      api: 404,
      elsewhere: 'refused',
    })
    await program.close()
    expect(existsSync(ledger)).toBe(true)
    expect(existsSync(`${ledger}-wal`)).toBe(false)
  })
})
