import { app, type BrowserWindow, dialog, Menu, shell } from 'electron'
import { start } from '../../core/words/en/start.ts'
import { refusedCode } from '../commands/start/open-window.ts'
import { refuseHeld } from '../shop/hold.ts'
import { ledgerFile, openShop, type Shop, type ShopChoice } from '../shop/open-shop.ts'
import { openingRefused } from '../shop/opening-refused.ts'
import { channels } from './channels.ts'
import { answer, guardContents } from './guards.ts'
import { claimScheme, denyPermissions, origin, serveDesktop } from './host.ts'
import { ledgerMenu } from './menu.ts'
import { printPaper, savePaper } from './papers.ts'
import { bringForward, createWindow } from './window.ts'

/** Chromium parses the switches, so that its own ones do not get in the way. */
const choice: ShopChoice = {
  ledger: app.commandLine.getSwitchValue('ledger') || undefined,
  demo: app.commandLine.hasSwitch('demo'),
}

/** Says why nothing is opened, on screen and to whoever started the program, and ends it. */
function giveUp(sentence: string): void {
  console.error(sentence)
  dialog.showErrorBox('Countwheel', sentence)
  app.exit(refusedCode)
}

/** Gives the window its guards, its messages and its menu. */
function equip(window: BrowserWindow, shop: Shop): void {
  const { webContents } = window
  const openFolder = () => shell.showItemInFolder(shop.file)
  guardContents(webContents, path => void printPaper(shop.handle, path))
  answer(webContents, channels.savePaper, path => savePaper(window, shop.handle, path))
  answer(webContents, channels.printPaper, path => printPaper(shop.handle, path))
  answer(webContents, channels.openLedgerFolder, openFolder)
  Menu.setApplicationMenu(ledgerMenu(window, openFolder))
}

/** Every way out closes the ledger's file: the window, the menu, Ctrl-C, a signal of the system. */
function closeWith(shop: Shop): void {
  const quit = () => void shop.lastCopy().finally(() => app.quit())
  app.on('window-all-closed', quit)
  app.on('will-quit', () => shop.close())
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, quit)
}

/** Opens the ledger, then the window on it. */
async function openDesktop(): Promise<void> {
  let window: BrowserWindow | undefined
  const forward = () => window && bringForward(window)
  const shown = () => {
    forward()
    return ''
  }
  const shop = await openShop(choice, shown, true)
  closeWith(shop)
  app.on('second-instance', forward)
  denyPermissions()
  serveDesktop(shop.handle)
  window = createWindow('Countwheel')
  equip(window, shop)
  await window.loadURL(`${origin}/`)
  console.log(start.inWindow({ file: shop.file }))
}

/** One window on one computer: a second start is told where the first one is. */
async function openOnce(): Promise<void> {
  const first = app.requestSingleInstanceLock()
  await app.whenReady()
  if (first) return openDesktop()
  await refuseHeld(ledgerFile(choice))
  giveUp(start.otherWindow)
}

/** What is no refusal is a mistake of ours: told in full, and the program ends. */
function fail(error: unknown): void {
  try {
    giveUp(openingRefused(error, { file: ledgerFile(choice) }))
  } catch (mistake) {
    console.error(mistake)
    app.exit(1)
  }
}

claimScheme()
openOnce().catch(fail)
