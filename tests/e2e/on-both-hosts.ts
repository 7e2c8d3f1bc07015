import { type Page, test } from '@playwright/test'
import { openDesktop } from '../desktop/open-desktop.ts'
import { startShop } from './start-shop.ts'

/** The ledger open before a person, whichever host carries it. */
export interface Opened {
  readonly page: Page
  /** The ledger's file. */
  readonly ledger: string
}

/** Two tests of the same work: in a browser on the loopback host, and in the desktop window. */
export function onBothHosts(
  title: string,
  work: (opened: Opened) => Promise<void>,
  asked: { readonly demo?: boolean } = {},
): void {
  test(`${title}: in a browser`, async ({ page }) => {
    const shop = await startShop(asked)
    try {
      await page.goto(shop.url)
      await work({ page, ledger: shop.ledger })
    } finally {
      await shop.close()
    }
  })

  test(`${title}: in the desktop window`, async () => {
    const desktop = openDesktop(asked)
    try {
      await work({ page: await desktop.page(), ledger: desktop.ledger })
    } finally {
      await desktop.close()
    }
  })
}
