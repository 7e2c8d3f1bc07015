import { type IpcMainInvokeEvent, ipcMain, shell, type WebContents } from 'electron'
import { isOwn, origin } from './host.ts'

/** What a person may leave the ledger for: to write to an owner or to ring one up. */
const leaves = (address: string) => /^(mailto|tel):/i.test(address)

/** A page asks for a new window: none is ever opened; papers go to `openPaper`, mail and telephone to their programs. */
function insteadOfWindow(address: string, openPaper: (path: string) => void): void {
  if (leaves(address)) void shell.openExternal(address)
  else if (isOwn(address)) openPaper(address.slice(origin.length))
}

/** Keeps the window on the ledger's own pages, whatever a page or a link asks for. */
export function guardContents(contents: WebContents, openPaper: (path: string) => void): void {
  const stay = (event: { preventDefault(): void }, address: string) => {
    if (isOwn(address)) return
    event.preventDefault()
    if (leaves(address)) void shell.openExternal(address)
  }
  contents.on('will-navigate', event => stay(event, event.url))
  contents.on('will-redirect', event => stay(event, event.url))
  contents.on('will-attach-webview', event => event.preventDefault())
  contents.setWindowOpenHandler(({ url }) => {
    insteadOfWindow(url, openPaper)
    return { action: 'deny' }
  })
}

/** True for the top frame of the ledger's own window. */
const isWindow = (event: IpcMainInvokeEvent, contents: WebContents) =>
  event.sender === contents && event.senderFrame === contents.mainFrame && isOwn(event.senderFrame?.url ?? '')

/** Answers a message from the ledger's own window with `act`; a message from anywhere else fails. */
export function answer<T>(
  contents: WebContents,
  channel: string,
  act: (given: unknown) => T | Promise<T>,
): void {
  ipcMain.handle(channel, (event, given: unknown) => {
    if (!isWindow(event, contents)) throw new Error('not from the ledger’s window')
    return act(given)
  })
}
