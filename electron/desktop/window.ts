import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { app, BrowserWindow, screen } from 'electron'
import { z } from 'zod'
import { places } from '../places.ts'
import { isReachable } from './reachable.ts'

const remembered = z.object({
  x: z.int(),
  y: z.int(),
  width: z.int().min(320).max(20_000),
  height: z.int().min(240).max(20_000),
  maximized: z.boolean(),
})

type Remembered = z.infer<typeof remembered>

const usual = { width: 1280, height: 860 } as const

const memory = () => join(app.getPath('userData'), 'window.json')

/** Where the window was last; nothing for a first start, an unreadable note or a display that is gone. */
function lastPlace(): Remembered | undefined {
  try {
    const place = remembered.parse(JSON.parse(readFileSync(memory(), 'utf8')))
    const areas = screen.getAllDisplays().map(display => display.workArea)
    return isReachable(place, areas) ? place : undefined
  } catch {
    return undefined
  }
}

/** The window's place is a convenience: a note that cannot be written is left. */
function remember(window: BrowserWindow): void {
  const note: Remembered = { ...window.getNormalBounds(), maximized: window.isMaximized() }
  try {
    writeFileSync(memory(), JSON.stringify(note))
  } catch (error) {
    console.error(error)
  }
}

/** The ledger's window, sandboxed and apart from the pages' code, where it was last time; not shown yet. */
export function createWindow(title: string): BrowserWindow {
  const { maximized, ...bounds } = lastPlace() ?? { ...usual, maximized: false }
  const window = new BrowserWindow({
    ...bounds,
    title,
    show: false,
    webPreferences: {
      preload: places.preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webviewTag: false,
      spellcheck: false,
    },
  })
  if (maximized) window.maximize()
  window.once('ready-to-show', () => window.show())
  window.on('close', () => remember(window))
  return window
}

/** Brings the window before the person who asked for it again. */
export function bringForward(window: BrowserWindow): void {
  if (window.isMinimized()) window.restore()
  window.show()
  window.focus()
}
