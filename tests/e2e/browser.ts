import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { chromium } from '@playwright/test'
import { aptInstall, onPath, runs } from '../install.ts'

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

const elsewhere = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
]

/** True for a program that starts: some systems have a stand-in under a browser's name that only advises to install it. */
const starts = (file: string) =>
  process.platform === 'win32' || spawnSync(file, ['--version'], { timeout: 20_000 }).status === 0

const system = () =>
  [...names.map(onPath), ...elsewhere].find(file => file !== undefined && existsSync(file) && starts(file))

const playwrightsOwn = () => [chromium.executablePath()].find(file => file !== '' && existsSync(file))

/** Playwright's own installer; as root it then adds the system libraries a browser needs. */
function installByPlaywright(): boolean {
  const cli = join(dirname(createRequire(import.meta.url).resolve('@playwright/test/package.json')), 'cli.js')
  const playwright = (command: string) => runs(process.execPath, [cli, command, 'chromium'])
  console.error('No Chromium or Chrome found: installing one for the tests …')
  if (!playwright('install')) return false
  if (process.getuid?.() === 0) playwright('install-deps')
  return true
}

function installed(): string | undefined {
  if (installByPlaywright()) return playwrightsOwn()
  return aptInstall(['chromium']) ? system() : undefined
}

function named(): string | undefined {
  const file = process.env.CHROMIUM_PATH
  if (file && !existsSync(file)) throw new Error(`CHROMIUM_PATH names ${file}, where there is no file.`)
  return file || undefined
}

/**
 * The browser of the tests: the one CHROMIUM_PATH names, the system's Chromium or Chrome, Playwright's own, or one
 * that is installed now. Throws with what to do where none can be had.
 */
export function browserPath(): string {
  const file = named() ?? system() ?? playwrightsOwn() ?? installed()
  if (!file)
    throw new Error('The tests need Chromium or Chrome: install one, or name its program in CHROMIUM_PATH.')
  return file
}

/** What the browser is told at its start: to leave the network alone. */
export const quiet = [
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
] as const
