import { EventEmitter } from 'node:events'
import { readFileSync } from 'node:fs'
import type { BrowserContext, Frame, Page, Request as PageRequest, Route } from '@playwright/test'
import { openPage } from './chromium.ts'
import { note } from './notes.ts'

type Handler = (request: Request) => Response | Promise<Response>
type Listener = (event: { sender: unknown; senderFrame: unknown }, ...given: unknown[]) => unknown

/** Playwright serves no scheme of its own making, so the ledger's pages get this address, a secure context too. */
const alias = 'http://app-ledger.localhost'
const aliased = (address: string) => address.replace('app://ledger', alias)
const unaliased = (address: string) => address.replace(alias, 'app://ledger')

/** Served schemes and answered messages, as the program registered them. */
export const served = new Map<string, Handler>()
export const answered = new Map<string, Listener>()

/** Runs the built preload in the page as Electron would, with the two modules a sandboxed preload may have. */
const preloadScript = (source: string) => `(() => {
  const heard = new Map()
  window.standInSend = (channel, given) => (heard.get(channel) ?? []).forEach(listener => listener({}, ...given))
  const electron = {
    contextBridge: { exposeInMainWorld: (name, bridge) => { window[name] = Object.freeze(bridge) } },
    ipcRenderer: {
      invoke: (channel, ...given) => window.standInInvoke(channel, ...given),
      on: (channel, listener) => heard.set(channel, [...(heard.get(channel) ?? []), listener]),
      off: (channel, listener) => heard.set(channel, (heard.get(channel) ?? []).filter(one => one !== listener)),
    },
  }
  const require = name => {
    if (name !== 'electron') throw new Error('a sandboxed preload cannot have ' + name)
    return electron
  }
  ;(() => { ${source}
  })()
})()`

async function fulfil(route: Route): Promise<void> {
  const { origin, ...headers } = await route.request().allHeaders()
  const handler = served.get('app')
  if (!handler) return route.abort('failed')
  const asked = Object.entries(headers).filter(([name]) => !name.startsWith(':') && name !== 'host')
  const body = route.request().postDataBuffer()
  const answer = await handler(
    new Request(unaliased(route.request().url()), {
      method: route.request().method(),
      headers: { ...Object.fromEntries(asked), ...(origin && { origin: unaliased(origin) }) },
      ...(body && { body: new Uint8Array(body) }),
    }),
  )
  const bytes = Buffer.from(await answer.arrayBuffer())
  await route.fulfill({ status: answer.status, headers: Object.fromEntries(answer.headers), body: bytes })
}

/** Whether a page asks: the first request of a window about to open has no page yet. */
function isOf(request: PageRequest, page: Page | undefined): boolean {
  try {
    return request.frame().page() === page
  } catch {
    return false
  }
}

/** Stands for Electron's WebContents. */
export class WebContents extends EventEmitter {
  readonly mainFrame = { url: '' }
  page: Page | undefined
  private openHandler: ((asked: { url: string }) => { action: string }) | undefined

  setWindowOpenHandler(handler: (asked: { url: string }) => { action: string }): void {
    this.openHandler = handler
  }

  send(channel: string, ...given: unknown[]): void {
    void this.page?.evaluate(
      ([name, values]) => {
        ;(window as unknown as { standInSend(n: unknown, v: unknown): void }).standInSend(name, values)
      },
      [channel, given] as const,
    )
  }

  print(): void {
    note('print', unaliased(this.page?.url() ?? ''))
  }

  /** A message of the page; whichever frame sends it says so. */
  private invoke(frame: Frame, channel: string, given: unknown[]): unknown {
    const listener = answered.get(channel)
    if (!listener) throw new Error(`nobody answers ${channel}`)
    const url = unaliased(frame.url())
    const senderFrame = frame === this.page?.mainFrame() ? Object.assign(this.mainFrame, { url }) : { url }
    return listener({ sender: this, senderFrame }, ...given)
  }

  /** What happens to a request of the page: own ones are served, new windows and foreign pages asked about. */
  private async route(route: Route): Promise<void> {
    const request = route.request()
    const url = unaliased(request.url())
    if (!isOf(request, this.page)) {
      note('window open', { url, ...this.openHandler?.({ url }) })
      return route.abort()
    }
    const event = {
      url,
      defaultPrevented: false,
      preventDefault: () => Object.assign(event, { defaultPrevented: true }),
    }
    if (request.isNavigationRequest()) this.emit('will-navigate', event)
    if (event.defaultPrevented || !request.url().startsWith(alias)) {
      note('kept away', url)
      return route.abort('aborted')
    }
    return fulfil(route)
  }

  async open(address: string, preload: string): Promise<void> {
    const { context, page } = await openPage()
    this.page = page
    await this.equip(context, page, preload)
    page.on('close', () => this.emit('destroyed'))
    await page.goto(aliased(address))
  }

  private async equip(context: BrowserContext, page: Page, preload: string): Promise<void> {
    await page.exposeBinding('standInInvoke', ({ frame }, channel: string, ...given: unknown[]) =>
      this.invoke(frame, channel, given),
    )
    await page.addInitScript({ content: preloadScript(readFileSync(preload, 'utf8')) })
    context.on('page', other => void other.close())
    await context.route('**/*', route => this.route(route))
  }
}

interface WindowOptions {
  readonly webPreferences: { readonly preload: string }
}

const usual = { x: 0, y: 0, width: 1280, height: 860 }

/** Stands for Electron's BrowserWindow. */
export class BrowserWindow extends EventEmitter {
  readonly webContents = new WebContents()
  private readonly options: WindowOptions

  constructor(options: WindowOptions) {
    super()
    this.options = options
    note('window', options)
  }

  async loadURL(address: string): Promise<void> {
    this.webContents.once('destroyed', () => this.closed())
    await this.webContents.open(address, process.env.STAND_IN_PRELOAD ?? this.options.webPreferences.preload)
    this.emit('ready-to-show')
  }

  private closed(): void {
    this.emit('close')
    this.emit('closed')
  }

  getNormalBounds = () => usual
  isMaximized = () => false
  isMinimized = () => false
  maximize = () => note('maximize', {})
  restore = () => note('restore', {})
  show = () => note('show', {})
  focus = () => note('focus', {})
}
