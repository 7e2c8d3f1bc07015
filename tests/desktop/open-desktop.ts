import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { places } from '../../electron/places.ts'
import type { Note } from './stand-in/notes.ts'

/** What the desktop program is started with. */
export interface DesktopAsked {
  /** The ledger's file; a fresh one where not given. */
  readonly ledger?: string
  readonly demo?: boolean
  /** Another preload than the built one. */
  readonly preload?: string
  /** Another window of the program is open already. */
  readonly second?: boolean
}

/** The real main process and preload, running against the stand-in for Electron. */
export interface Desktop {
  readonly process: ChildProcess
  readonly ledger: string
  /** What it has asked of Electron under this name, oldest first, since its start or since `forget`. */
  notes(what: string): unknown[]
  forget(): void
  /** The window's page; waits until it is open, throws when the program ends instead. */
  page(): Promise<Page>
  /** Presses a key of the menu by Electron's name of it, as in `CmdOrCtrl+F`. */
  press(accelerator: string): void
  /** Where the person says to save papers from now on; they think better of it until this is said. */
  saveAs(file: string): void
  /** What it has written on standard error. */
  said(): string
  /** Waits for its end; its exit code. */
  ended(): Promise<number | null>
  /** Closes it as a signal of the system does, and takes its files away. */
  close(): Promise<void>
}

const standIn = join(import.meta.dirname, 'stand-in/run.ts')

const environment = ({ preload, second }: DesktopAsked, folder: string) => ({
  ...process.env,
  STAND_IN_NOTES: join(folder, 'notes'),
  STAND_IN_USER_DATA: folder,
  ...(preload && { STAND_IN_PRELOAD: preload }),
  STAND_IN_SAVE_AS: join(folder, 'save-as'),
  ...(second && { STAND_IN_SECOND: '1' }),
})

function readNotes(file: string): Note[] {
  if (!existsSync(file)) return []
  return readFileSync(file, 'utf8')
    .split('\n')
    .filter(Boolean)
    .map(line => JSON.parse(line) as Note)
}

async function windowPage(child: ChildProcess, notes: (what: string) => unknown[]): Promise<Page> {
  while (notes('show').length === 0) {
    if (child.exitCode !== null) throw new Error(`the desktop program ended with ${child.exitCode}`)
    await new Promise(resolve => setTimeout(resolve, 50))
  }
  const browser = await chromium.connectOverCDP(String(notes('browser')[0]))
  const page = browser.contexts()[0]?.pages()[0]
  if (!page) throw new Error('the window has no page')
  return page
}

/** Starts the desktop program; whoever starts it closes it. */
export function openDesktop(asked: DesktopAsked = {}): Desktop {
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-desktop-'))
  const ledger = asked.ledger ?? join(folder, 'shop.countwheel')
  const args = [standIn, places.root, `--ledger=${ledger}`, ...(asked.demo ? ['--demo'] : [])]
  const child = spawn(process.execPath, args, { env: environment(asked, folder), stdio: 'pipe' })
  const exit = once(child, 'exit')
  const notes = (what: string) =>
    readNotes(join(folder, 'notes')).flatMap(one => (one.what === what ? [one.with] : []))
  let said = ''
  child.stderr.on('data', piece => {
    said += piece
  })
  return {
    process: child,
    ledger,
    notes,
    forget: () => rmSync(join(folder, 'notes'), { force: true }),
    page: () => windowPage(child, notes),
    press: accelerator => void child.stdin.write(`${accelerator}\n`),
    saveAs: file => writeFileSync(join(folder, 'save-as'), file),
    said: () => said,
    ended: async () => (await exit)[0],
    close: async () => {
      child.kill('SIGTERM')
      await exit
      // The browser's helpers may still be writing their last.
      rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 })
    },
  }
}
