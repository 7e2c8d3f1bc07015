import { expect, type Page, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { clearToAxe } from './clear-to-axe.ts'
import { Hands } from './hands.ts'
import { type StartedShop, startShop } from './start-shop.ts'

const { priceBook, repair, screens, shop: settings } = en

let shop: StartedShop
test.beforeAll(async () => {
  shop = await startShop({ demo: true })
})
test.afterAll(() => shop.close())

const lineAt = (page: Page, index: number, key: string) => page.locator(`[name="lines[${index}].${key}"]`)

// Repair 2214 of the demonstration is a ship's bell clock of two trains with a silvered dial, taken in and not estimated yet.
test('an estimate is written from the price book by keyboard alone, and its versions are compared', async ({
  page,
}) => {
  const hands = new Hands(page)
  await page.goto(shop.url)

  await test.step('the price book is changed on the Shop page', async () => {
    await page.goto(`${shop.origin}/shop/prices`)
    await hands.fill(settings.prices.rushPercent, '50')
    await hands.push(settings.save)
    await expect(page.getByText(settings.saved(settings.groups.prices))).toBeVisible()
  })

  await test.step('a line is taken from it with its working', async () => {
    await page.goto(`${shop.origin}/counter/2214/write-estimate`)
    await hands.push(priceBook.open)
    await expect(page.getByLabel(priceBook.what, { exact: true })).toBeFocused()
    await hands.choose(priceBook.work, en.lineWorks.overhaul)
    await hands.fill(priceBook.furtherHours, '1')
    await hands.to(page.getByLabel(priceBook.rush, { exact: true }))
    await hands.press('Space')
    await expect(page.getByText(priceBook.comesTo('£360.00'))).toBeVisible()
    await clearToAxe(page)
    await hands.press('Enter')
    await expect(lineAt(page, 0, 'description')).toBeFocused()
    await expect(lineAt(page, 0, 'description')).toHaveValue('Full overhaul')
    await expect(lineAt(page, 0, 'quantity')).toHaveValue('5')
    await hands.to(page.locator('.working summary').first())
    await hands.press('Enter')
    await expect(page.getByText('50 % for rush work, 120.00')).toBeVisible()
  })

  await test.step('cleaning the silvered dial is refused, with the reason at the line', async () => {
    await hands.push(priceBook.open)
    await hands.choose(priceBook.work, en.lineWorks['dial-cleaning'])
    await expect(page.getByText(en.problems['refused.silvered-dial']())).toBeVisible()
    await hands.press('Enter')
    await expect(lineAt(page, 1, 'description')).toHaveValue('Dial cleaning')
    await hands.press('Control+Enter')
    await expect(page.getByRole('alert')).toBeFocused()
    await expect(page.getByRole('alert')).toContainText(en.problems['refused.silvered-dial']())
    await clearToAxe(page)
    await hands.push(screens.form.remove(repair.estimateForm.lineOf(2)))
  })

  await test.step('a house call is asked for, Escape takes nothing, and the estimate is written', async () => {
    await hands.push(priceBook.open)
    await hands.choose(priceBook.what, priceBook.from['call-out'])
    await hands.fill(priceBook.distance, '18')
    await hands.press('Escape')
    await expect(page.getByRole('button', { name: priceBook.open })).toBeFocused()
    await hands.press('Enter')
    await hands.choose(priceBook.what, priceBook.from['call-out'])
    await hands.fill(priceBook.distance, '18')
    await hands.press('Enter')
    await expect(lineAt(page, 1, 'unit')).toHaveValue('44.00')
    await hands.press('Control+Enter')
    await expect(page.getByText(repair.estimateForm.said('2214/1', '£484.80'))).toBeVisible()
  })

  await test.step('a second version shows what it changed', async () => {
    await page.goto(`${shop.origin}/counter/2214/write-estimate`)
    await hands.to(lineAt(page, 0, 'quantity'))
    await hands.press('ControlOrMeta+A')
    await hands.write('4')
    await hands.push(screens.form.remove(repair.estimateForm.lineOf(2)))
    await hands.press('Control+Enter')
    await expect(page.getByText(repair.estimateForm.said('2214/2', '£230.40'))).toBeVisible()
    await hands.to(page.locator('summary', { hasText: priceBook.against('2214/1') }))
    await hands.press('Enter')
    await expect(page.locator('.changes')).toContainText('House call, £44.00')
    await expect(page.locator('.changes')).toContainText('Full overhaul, £360.00 → Full overhaul, £192.00')
    await expect(page.getByText(priceBook.difference(priceBook.less('£212.00')))).toBeVisible()
    await clearToAxe(page)
  })
})
