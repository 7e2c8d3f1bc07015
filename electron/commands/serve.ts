import { start } from '../../core/words/en/start.ts'
import { type Loopback, serveLoopback } from '../server/hosts/loopback.ts'
import { LedgerHeld } from '../shop/hold.ts'
import { ledgerFile, openShop, type ShopChoice } from '../shop/open-shop.ts'
import { openingRefused } from '../shop/opening-refused.ts'
import type { StartChoice } from './start/arguments.ts'
import { openBrowser } from './start/browser.ts'
import { whenAskedToEnd } from './start/ending.ts'

/** Where the pages are served when nobody asks for a port: always the same, so that a bookmark stays good. */
export const usualPort = 4812

/** A shop being served on loopback. */
export interface ServedShop {
  readonly file: string
  readonly loopback: Loopback
  /** Ends the serving, then closes the ledger's file cleanly. */
  close(): Promise<void>
}

/**
 * Opens the shop that `choice` names and serves it to this computer's browsers, on `port` or on the usual one (any
 * free one when that is taken). Throws what `openShop` and `serveLoopback` throw, with nothing left open.
 */
export async function serveShop(
  choice: ShopChoice & { readonly port?: number; readonly asks?: boolean },
): Promise<ServedShop> {
  let loopback: Loopback | undefined
  const shop = await openShop(choice, () => loopback?.freshAddress() ?? '', choice.asks)
  try {
    const served = await serveLoopback(shop.handle, {
      port: choice.port ?? usualPort,
      elseAny: choice.port === undefined,
    })
    loopback = served
    const close = async () => {
      await served.close()
      await shop.lastCopy()
      shop.close()
    }
    return { file: shop.file, loopback: served, close }
  } catch (error) {
    shop.close()
    throw error
  }
}

/** Says why the ledger is not served, and shows where it is open already when it is. */
function tellRefused(error: unknown, choice: StartChoice): void {
  const port = choice.port === undefined ? {} : { port: choice.port }
  console.error(openingRefused(error, { file: ledgerFile(choice), ...port }))
  if (choice.open && error instanceof LedgerHeld && error.address) openBrowser(error.address)
}

/**
 * The loopback half of the start command: serves the ledger, prints the one line with its address, and closes the
 * file when asked to end. Returns the exit code. The browser it opens gets a key of its own, so that the printed
 * one stays unused.
 */
export async function serveCommand(choice: StartChoice): Promise<number> {
  const ended = new Promise<unknown>(whenAskedToEnd)
  const shop = await serveShop({ ...choice, asks: choice.open }).catch((error: unknown) =>
    tellRefused(error, choice),
  )
  if (!shop) return 1
  const line = choice.demo ? start.demoAtAddress : start.atAddress
  console.log(line({ file: shop.file, address: shop.loopback.address }))
  if (choice.open) openBrowser(shop.loopback.freshAddress())
  await ended
  await shop.close()
  return 0
}
