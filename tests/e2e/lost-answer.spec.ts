import type { Page } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { expect, test } from './at-the-counter.ts'

const { payForm } = en.repair
const { screens, register } = en

const ask = (page: Page, path: string) =>
  page.evaluate(async path => (await fetch(path)).json(), `/api/pages/${path}`)
const receipts = async (page: Page) => (await ask(page, 'documents?kind=receipt')).rows.length
const owners = async (page: Page, name: string) =>
  (await ask(page, 'owners')).rows.filter((row: { name: string }) => row.name === name).length

/** Lets what is sent to this address reach the ledger, and loses so many of its answers. */
async function loseAnswers(page: Page, address: string, count: number): Promise<{ readonly sent: string[] }> {
  const sent: string[] = []
  let left = count
  await page.route(`**/api/${address}`, async route => {
    const key = route.request().headers()['idempotency-key']
    if (key === undefined) return route.continue()
    sent.push(key)
    if (left === 0) return route.continue()
    left -= 1
    await route.fetch()
    await route.abort('connectionreset')
  })
  return { sent }
}

test.describe('an act whose answer is lost on its way', () => {
  test('a payment is entered once, and the page tells so', async ({ page, hands, shop }) => {
    const owed = (await ask(page, 'owed')).rows.find((row: { dueMinor: number }) => row.dueMinor > 0)
    await hands.choose(screens.who.label, 'Ines Marrow')
    await page.goto(`${shop.origin}/counter/${owed.number}/pay`)
    const before = await receipts(page)
    const { sent } = await loseAnswers(page, 'accounts/pay', 2)
    await hands.to(page.getByLabel(payForm.amount, { exact: true }))
    await hands.press('Control+Enter')
    await hands.agree(payForm.send)
    await expect(page.getByText(/Receipt R\d+ is issued/)).toBeVisible()
    expect(await receipts(page)).toBe(before + 1)
    expect([sent.length, new Set(sent).size]).toEqual([3, 1])
  })

  test('where none comes at all the page says that it does not know; sent again it finds out', async ({
    page,
    hands,
    shop,
  }) => {
    await page.goto(`${shop.origin}/register/new-owner`)
    await hands.fill(register.ownerForm.name, 'Odalys Wren')
    const { sent } = await loseAnswers(page, 'register/addOwner', 4)
    await hands.push(register.ownerForm.enter)
    await expect(page.getByText(screens.askingAgain)).toBeVisible()
    await expect(page.getByRole('alert')).toContainText(screens.unanswered)
    await expect(page.getByLabel(register.ownerForm.name, { exact: true })).toHaveValue('Odalys Wren')
    expect(await owners(page, 'Odalys Wren')).toBe(1)
    await hands.push(register.ownerForm.enter)
    await expect(page.getByRole('heading', { level: 1, name: 'Odalys Wren' })).toBeVisible()
    expect(await owners(page, 'Odalys Wren')).toBe(1)
    expect([sent.length, new Set(sent).size]).toEqual([5, 1])
  })
})

test('a button pressed twice at once does its act once', async ({ page, hands, shop }) => {
  await page.goto(`${shop.origin}/register/new-owner`)
  await hands.fill(register.ownerForm.name, 'Odalys Wren')
  await page.getByRole('button', { name: register.ownerForm.enter }).dblclick()
  await expect(page.getByRole('heading', { level: 1, name: 'Odalys Wren' })).toBeVisible()
  expect(await owners(page, 'Odalys Wren')).toBe(1)
})
