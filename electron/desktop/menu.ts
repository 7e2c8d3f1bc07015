import { type BrowserWindow, Menu, type MenuItemConstructorOptions } from 'electron'
import { type PageName, start } from '../../core/words/en/start.ts'
import type { MenuCommand } from './bridge.ts'
import { channels } from './channels.ts'

const words = start.menu

/** A menu entry that the pages carry out. */
const command = (window: BrowserWindow, label: string, what: MenuCommand, accelerator: string) => ({
  label,
  accelerator,
  click: () => window.webContents.send(channels.menu, what),
})

/** The pages in the order of the thumb index, on Ctrl/Cmd with 1, 2, 3 … */
const pages = (window: BrowserWindow): MenuItemConstructorOptions[] =>
  Object.entries(words.pages).map(([name, label], index) =>
    command(window, label, name as PageName, `CmdOrCtrl+${index + 1}`),
  )

const file = (window: BrowserWindow, openFolder: () => void): MenuItemConstructorOptions[] => [
  { label: words.openFolder, click: openFolder },
  { label: words.print, accelerator: 'CmdOrCtrl+P', click: () => window.webContents.print() },
  { type: 'separator' },
  { label: words.close, role: 'quit' },
]

const edit = (window: BrowserWindow): MenuItemConstructorOptions[] => [
  { role: 'undo' },
  { role: 'redo' },
  { type: 'separator' },
  { role: 'cut' },
  { role: 'copy' },
  { role: 'paste' },
  { role: 'selectAll' },
  { type: 'separator' },
  command(window, words.find, 'find', 'CmdOrCtrl+F'),
]

const view = (window: BrowserWindow): MenuItemConstructorOptions[] => [
  command(window, words.theme, 'theme', 'CmdOrCtrl+Shift+L'),
  { type: 'separator' },
  { label: words.zoomIn, role: 'zoomIn' },
  { label: words.zoomOut, role: 'zoomOut' },
  { label: words.zoomReset, role: 'resetZoom' },
  { label: words.fullScreen, role: 'togglefullscreen' },
]

/** The window's menu. Nothing in it changes the ledger: it turns pages, finds, prints, zooms and changes the light. */
export function ledgerMenu(window: BrowserWindow, openFolder: () => void): Menu {
  return Menu.buildFromTemplate([
    ...(process.platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
    { label: words.file, submenu: file(window, openFolder) },
    { label: words.edit, submenu: edit(window) },
    { label: words.go, submenu: pages(window) },
    { label: words.view, submenu: view(window) },
  ])
}
