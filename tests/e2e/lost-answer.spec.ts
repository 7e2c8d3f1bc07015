import type { Page } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { expect, test } from './at-the-counter.ts'
import type { Hands } from './hands.ts'
import type { StartedShop } from './start-shop.ts'

const { payForm } = en.repair
const { screens, register, counter } = en

const ask = (page: Page, path: string) =>
  page.evaluate(async path => (await fetch(path)).json(), `/api/${path}`)
const receipts = async (page: Page) => (await ask(page, 'pages/documents?kind=receipt')).rows.length
const owners = async (page: Page, name: string) =>
  (await ask(page, 'pages/owners')).rows.filter((row: { name: string }) => row.name === name).length

/**
 * Loses so many answers of what is sent under a key to this address: what is sent reaches the ledger, or is lost as well. Tells under
 * which keys it was sent.
 */
async function lose(page: Page, address: string, count: number, what: 'answer' | 'request' = 'answer') {
  const sent: string[] = []
  let left = count
  await page.route(`**/api/${address}`, async route => {
    const key = route.request().headers()['idempotency-key']
    if (key === undefined) return route.continue()
    sent.push(key)
    if (left === 0) return route.continue()
    left -= 1
    if (what === 'answer') await route.fetch()
    await route.abort('connectionreset')
  })
  return sent
}

/** Opens the payment of a repair on which something is owed. */
async function openPayment(page: Page, hands: Hands, shop: StartedShop): Promise<void> {
  const owed = (await ask(page, 'pages/owed')).rows.find((row: { dueMinor: number }) => row.dueMinor > 500)
  await hands.choose(screens.who.label, 'Ines Marrow')
  await page.goto(`${shop.origin}/counter/${owed.number}/pay`)
  await expect(page.getByLabel(payForm.amount, { exact: true })).toBeVisible()
}

async function pay(hands: Hands, amount?: string): Promise<void> {
  if (amount === undefined) await hands.to(hands.page.getByLabel(payForm.amount, { exact: true }))
  else await hands.fill(payForm.amount, amount)
  await hands.press('Control+Enter')
}

const receiptIsIssued = (page: Page) => page.getByText(/Receipt R\d+ is issued/)
const notKnown = (page: Page) => page.getByRole('alert').filter({ hasText: screens.unanswered })

test.describe('a payment whose answer is lost on its way', () => {
  test('is entered once, and the page tells so', async ({ page, hands, shop }) => {
    await openPayment(page, hands, shop)
    const before = await receipts(page)
    const sent = await lose(page, 'accounts/pay', 2)
    await pay(hands)
    await hands.agree(payForm.send)
    await expect(receiptIsIssued(page)).toBeVisible()
    expect(await receipts(page)).toBe(before + 1)
    expect([sent.length, new Set(sent).size]).toEqual([3, 1])
  })

  test('is not known to be entered where no answer comes at all; “Ask again” finds out', async ({
    page,
    hands,
    shop,
  }) => {
    await openPayment(page, hands, shop)
    const before = await receipts(page)
    const sent = await lose(page, 'accounts/pay', 4)
    await pay(hands)
    await hands.agree(payForm.send)
    await expect(page.getByText(screens.askingAgain)).toBeVisible()
    await expect(notKnown(page)).toBeVisible()
    await expect(page.getByText(screens.askingAgain)).toHaveCount(0)
    await hands.push(screens.askAgain)
    await expect(receiptIsIssued(page)).toBeVisible()
    expect(await receipts(page)).toBe(before + 1)
    expect([sent.length, new Set(sent).size]).toEqual([5, 1])
  })

  test('is told as it was entered where its amount was changed since; the change is not entered', async ({
    page,
    hands,
    shop,
  }) => {
    await openPayment(page, hands, shop)
    const before = await receipts(page)
    await lose(page, 'accounts/pay', 4)
    await pay(hands, '1.00')
    await hands.agree(payForm.send)
    await expect(notKnown(page)).toBeVisible()
    await pay(hands, '2.00')
    await expect(receiptIsIssued(page)).toContainText(screens.changedSince)
    expect(await receipts(page)).toBe(before + 1)
    const [latest] = (await ask(page, 'pages/documents?kind=receipt')).rows
    expect(latest.totalMinor).toBe(100)
  })

  test('is asked about anew with the changed amount where nothing had reached the ledger', async ({
    page,
    hands,
    shop,
  }) => {
    await openPayment(page, hands, shop)
    const before = await receipts(page)
    const sent = await lose(page, 'accounts/pay', 4, 'request')
    await pay(hands, '1.00')
    await hands.agree(payForm.send)
    await expect(notKnown(page)).toBeVisible()
    expect(await receipts(page)).toBe(before)
    await pay(hands, '2.00')
    await hands.agree(payForm.send)
    await expect(receiptIsIssued(page)).toBeVisible()
    await expect(page.getByText(screens.changedSince)).toHaveCount(0)
    expect(await receipts(page)).toBe(before + 1)
    const [latest] = (await ask(page, 'pages/documents?kind=receipt')).rows
    expect([latest.totalMinor, new Set(sent).size]).toEqual([200, 1])
  })
})

test('an owner whose entry was not answered is kept in the form, and entered once', async ({
  page,
  hands,
  shop,
}) => {
  await page.goto(`${shop.origin}/register/new-owner`)
  await hands.fill(register.ownerForm.name, 'Odalys Wren')
  const sent = await lose(page, 'register/addOwner', 4)
  await hands.push(register.ownerForm.enter)
  await expect(notKnown(page)).toBeVisible()
  await expect(page.getByLabel(register.ownerForm.name, { exact: true })).toHaveValue('Odalys Wren')
  expect(await owners(page, 'Odalys Wren')).toBe(1)
  await hands.push(register.ownerForm.enter)
  await expect(page.getByRole('heading', { level: 1, name: 'Odalys Wren' })).toBeVisible()
  expect(await owners(page, 'Odalys Wren')).toBe(1)
  expect([sent.length, new Set(sent).size]).toEqual([5, 1])
})

test('a button pressed twice at once does its act once, also where it asks first', async ({
  page,
  hands,
  shop,
}) => {
  await page.goto(`${shop.origin}/register/new-owner`)
  await hands.fill(register.ownerForm.name, 'Odalys Wren')
  await page.getByRole('button', { name: register.ownerForm.enter }).dblclick()
  await expect(page.getByRole('heading', { level: 1, name: 'Odalys Wren' })).toBeVisible()
  expect(await owners(page, 'Odalys Wren')).toBe(1)
  await page.goto(shop.origin)
  await openPayment(page, hands, shop)
  const before = await receipts(page)
  await pay(hands, '1.00')
  await page.getByRole('dialog').getByRole('button', { name: payForm.send }).dblclick()
  await expect(receiptIsIssued(page)).toBeVisible()
  expect(await receipts(page)).toBe(before + 1)
})

test('a clock typed in two windows of one draft is taken in once', async ({ page, hands }) => {
  await hands.choose(screens.who.label, 'Ines Marrow')
  await hands.fill(counter.line.name, 'Cuthbert Lowe-Tarn')
  await hands.press('Enter')
  await hands.fill(counter.takeIn.faultAsTold, 'Stops on Sundays.')
  const draft = new URL(page.url()).searchParams.get('draft') ?? ''
  const kept = async () => JSON.stringify((await ask(page, `drafts/${draft}`)).body)
  await expect.poll(kept).toContain('Stops on Sundays.')
  const second = await page.context().newPage()
  await second.goto(page.url())
  await expect(second.getByLabel(counter.takeIn.faultAsTold, { exact: true })).toHaveValue(
    'Stops on Sundays.',
  )
  await second.getByLabel(screens.who.label).selectOption('Ines Marrow')
  const takenIn = (at: Page) => at.getByRole('heading', { level: 1, name: /mantel clock/ })
  for (const window of [page, second]) {
    await window.getByRole('button', { name: counter.takeIn.send }).click()
    await expect(takenIn(window)).toBeVisible()
  }
  expect(second.url()).toBe(page.url())
  expect(await owners(page, 'Cuthbert Lowe-Tarn')).toBe(1)
  expect((await ask(page, 'drafts?page=take-in')).drafts).toEqual([])
})
