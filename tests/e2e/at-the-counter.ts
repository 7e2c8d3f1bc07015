import { test as base, expect, type Page } from '@playwright/test'
import { asToday } from '../electron/handler-fixture.ts'
import { Hands } from './hands.ts'
import { type StartedShop, startShop } from './start-shop.ts'

interface AtTheCounter {
  /** The demonstration shop, started for this test and ended after it. */
  readonly shop: StartedShop
  /** A person at the keyboard, with the Counter open. */
  readonly hands: Hands
}

/** A test at the counter of the demonstration shop. */
export const test = base.extend<AtTheCounter>({
  // biome-ignore lint/correctness/noEmptyPattern: a fixture that needs no other says so by an empty pattern
  shop: async ({}, use) => {
    const shop = await startShop({ demo: true })
    await use(shop)
    await shop.close()
  },
  hands: async ({ page, shop }, use) => {
    await page.goto(shop.url)
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
    await use(new Hands(page))
  },
})

/** Does an act of the owner’s, as from another window; returns what came of it. */
export const elsewhere = (page: Page, act: string, input: object) =>
  page.evaluate(
    async ([name, body]) => {
      const answer = await fetch(`/api/${name}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json', 'Countwheel-Person': '1' },
        body: JSON.stringify(body),
      })
      if (!answer.ok) throw new Error(await answer.text())
      return answer.json()
    },
    [act, asToday(act.replace('/', '.'), input)] as const,
  )

export { expect }
