import { EventEmitter } from 'node:events'
import { existsSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { note } from './notes.ts'
import { answered, served, BrowserWindow as Window } from './window.ts'

/**
 * Stands for the module `electron` in tests on computers without Electron's program: the real main process and
 * preload run against it, with a page of a real Chromium as the window. It has no context isolation, no real scheme,
 * no native menu and no permissions; those are seen through the real program only.
 */

const switchNamed = (name: string) =>
  process.argv.find(one => one === `--${name}` || one.startsWith(`--${name}=`))
/** A folder of the test's own, which it takes away in the end. */
const userData = process.env.STAND_IN_USER_DATA ?? ''

class App extends EventEmitter {
  readonly commandLine = {
    hasSwitch: (name: string) => switchNamed(name) !== undefined,
    getSwitchValue: (name: string) => switchNamed(name)?.split('=').slice(1).join('=') ?? '',
  }
  requestSingleInstanceLock = () => process.env.STAND_IN_SECOND === undefined
  whenReady = () => Promise.resolve()
  getPath = (name: string) => (name === 'userData' ? userData : tmpdir())
  exit = (code: number) => process.exit(code)
  quit = () => {
    this.emit('will-quit')
    process.exit(0)
  }
}

export const app = new App()

export class BrowserWindow extends Window {
  constructor(...given: ConstructorParameters<typeof Window>) {
    super(...given)
    this.on('closed', () => app.emit('window-all-closed'))
  }
}

export const protocol = {
  registerSchemesAsPrivileged: (schemes: unknown) => note('schemes', schemes),
  handle: (scheme: string, handler: (request: Request) => Promise<Response>) => served.set(scheme, handler),
}

type PermissionHandler = (contents: unknown, permission: string, answer: (granted: boolean) => void) => void

export const session = {
  defaultSession: {
    setPermissionRequestHandler: (handler: PermissionHandler) =>
      handler({}, 'media', granted => note('permission request', granted)),
    setPermissionCheckHandler: (handler: () => boolean) => note('permission check', handler()),
    setDevicePermissionHandler: (handler: () => boolean) => note('device permission', handler()),
  },
}

export const ipcMain = {
  handle: (channel: string, listener: () => unknown) => answered.set(channel, listener),
}

interface MenuItem {
  readonly label?: string
  readonly accelerator?: string
  readonly submenu?: readonly MenuItem[]
  readonly click?: () => void
}

/** All entries of a menu, however deep. */
const entries = (items: readonly MenuItem[]): readonly MenuItem[] =>
  items.flatMap(item => [item, ...entries(item.submenu ?? [])])

export const Menu = {
  buildFromTemplate: (items: readonly MenuItem[]) => items,
  setApplicationMenu: (items: readonly MenuItem[]) => {
    note('menu', items)
    // The test presses an entry's keys by sending their name to this process.
    process.stdin.on('data', keys =>
      entries(items)
        .find(item => item.accelerator === String(keys).trim())
        ?.click?.(),
    )
  },
}

export const dialog = {
  showErrorBox: (title: string, sentence: string) => note('error box', { title, sentence }),
  showSaveDialog: async (_window: unknown, options: unknown) => {
    note('save dialog', options)
    const file = process.env.STAND_IN_SAVE_AS ?? ''
    const filePath = existsSync(file) ? readFileSync(file, 'utf8') : ''
    return { canceled: filePath === '', filePath }
  },
}

export const shell = {
  openExternal: async (address: string) => note('open external', address),
  openPath: async (file: string) => {
    note('open path', file)
    return ''
  },
  showItemInFolder: (file: string) => note('show in folder', file),
}

export const screen = { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] }
