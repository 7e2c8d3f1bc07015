import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron'
import type { Bridge, MenuCommand } from './bridge.ts'
import { channels } from './channels.ts'

/** The whole of what the pages can reach outside their sandbox. */
const bridge: Bridge = {
  savePaper: path => ipcRenderer.invoke(channels.savePaper, path),
  printPaper: path => ipcRenderer.invoke(channels.printPaper, path),
  openLedgerFolder: () => ipcRenderer.invoke(channels.openLedgerFolder),
  onMenu: listener => {
    const heard = (_event: IpcRendererEvent, command: MenuCommand) => listener(command)
    ipcRenderer.on(channels.menu, heard)
    return () => void ipcRenderer.off(channels.menu, heard)
  },
}

contextBridge.exposeInMainWorld('countwheel', bridge)
