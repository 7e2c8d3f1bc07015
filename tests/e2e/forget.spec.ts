import type { Page } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { elsewhere, expect, test } from './at-the-counter.ts'
import { clearToAxe } from './clear-to-axe.ts'

const { forgetForm, owner: say } = en.register
const { screens } = en

const ask = (page: Page, path: string) =>
  page.evaluate(async path => (await fetch(path)).json(), `/api/pages/${path}`)

/** An owner of the demonstration of whom papers were issued and nothing is open. */
async function settledOwner(page: Page): Promise<{ id: number; name: string }> {
  for (const owner of (await ask(page, 'owners')).rows) {
    const { problems, kept } = await ask(page, `owners/${owner.id}/forget`)
    if (problems.length === 0 && kept.length > 0) return owner
  }
  throw new Error('everybody has something open')
}

test('an owner is forgotten by keyboard alone, after it was shown what goes and what tax law keeps', async ({
  page,
  hands,
  shop,
}) => {
  await elsewhere(page, 'backup', {})
  const { id, name } = await settledOwner(page)
  await page.goto(`${shop.origin}/register/owner/${id}`)
  await hands.choose(screens.who.label, 'Ines Marrow')
  await hands.to(page.locator('summary', { hasText: screens.form.more }).first())
  await hands.press('Enter')
  await hands.follow(say.forget)
  await expect(page.getByText(/kept until 31 Dec 2037/).first()).toBeVisible()
  await expect(page.getByText(/\.countwheel$/)).toBeVisible()
  await clearToAxe(page)
  await hands.fill(forgetForm.reason, 'Asked for by letter')
  await hands.press('Enter')
  await hands.agree(forgetForm.send)
  await expect(page.getByRole('heading', { level: 1, name: `Forgotten owner ${id}` })).toBeVisible()
  expect((await ask(page, 'owners')).rows.map((row: { name: string }) => row.name)).not.toContain(name)
})
