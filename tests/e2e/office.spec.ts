import { expect, test } from '@playwright/test'
import { Hands } from './hands.ts'
import { type StartedShop, startShop } from './start-shop.ts'

let shop: StartedShop
test.beforeAll(async () => {
  shop = await startShop({ demo: true })
})
test.afterAll(() => shop.close())

test('register, accounts and shop are worked by keyboard alone', async ({ page }) => {
  const hands = new Hands(page)
  const said = page.locator('.said')
  await page.goto(shop.url)
  await page.getByRole('heading', { level: 1 }).waitFor()

  await test.step('an owner is entered and reached another way', async () => {
    await hands.press('Alt+6')
    await expect(page.getByRole('heading', { level: 1, name: 'Register' })).toBeFocused()
    await hands.press('.')
    await hands.write('Wren Ashby')
    await hands.push('Enter a new owner')
    await expect(page.getByRole('textbox', { name: 'Name', exact: true })).toHaveValue('Wren Ashby')
    await hands.push('Enter the owner')
    await expect(page.getByRole('heading', { level: 1, name: 'Wren Ashby' })).toBeVisible()
    await hands.to(page.locator('summary', { hasText: 'More' }))
    await hands.press('Enter')
    await hands.follow('Add a telephone or e-mail')
    await hands.fill('Number', 'not a number')
    await hands.push('Add it')
    await expect(page.getByRole('alert')).toBeFocused()
    await hands.fill('Number', '020 7946 0123')
    await hands.push('Add it')
    await expect(page.getByRole('link', { name: '+44 20 7946 0123' })).toBeVisible()
  })

  await test.step('a duplicate is merged after what comes over was shown', async () => {
    await hands.press('Alt+6')
    await hands.press('.')
    await hands.write('Wren Ashby the second')
    await hands.push('Enter a new owner')
    await hands.push('Enter the owner')
    await hands.to(page.locator('summary', { hasText: 'More' }))
    await hands.press('Enter')
    await hands.follow('Merge a duplicate into this owner')
    await hands.write('Wren Ashby')
    await hands.take('Wren Ashby')
    await expect(page.getByText('From Wren Ashby to Wren Ashby the second come over:')).toBeVisible()
    await hands.push('Merge')
    await hands.agree('Merge')
    await expect(page.getByRole('link', { name: '+44 20 7946 0123' })).toBeVisible()
  })

  await test.step('an invoice is credited after a question', async () => {
    await hands.press('Alt+4')
    await hands.choose('Show', 'invoices')
    await hands.to(page.locator('a.open').first())
    await hands.press('Enter')
    await expect(page.getByRole('heading', { level: 1, name: /^Invoice / })).toBeVisible()
    await hands.to(page.locator('summary', { hasText: 'More' }))
    await hands.press('Enter')
    await hands.follow('Credit this invoice')
    await hands.write('Charged to the wrong owner')
    await hands.push('Write the credit note')
    await hands.agree('Write the credit note')
    await expect(page.getByRole('heading', { level: 1, name: /^Credit note / })).toBeVisible()
    await hands.press('Alt+4')
    await hands.follow('Day book')
    await expect(page.getByText('An invoice credited').first()).toBeVisible()
  })

  await test.step('hours that end before they begin are refused in their field, and right ones are kept', async () => {
    await hands.press('Alt+7')
    await hands.follow('Hours of the week')
    await hands.to(page.getByLabel('Sunday, stretch 1, from'))
    await page.getByLabel('Sunday, stretch 1, from').fill('12:00')
    await page.getByLabel('Sunday, stretch 1, to').fill('10:00')
    await hands.push('Save')
    await expect(page.getByRole('alert')).toBeFocused()
    await hands.press('Tab')
    await hands.press('Enter')
    await expect(page.getByLabel('Sunday, stretch 1, to')).toBeFocused()
    await page.getByLabel('Sunday, stretch 1, to').fill('14:00')
    await hands.push('Save')
    await expect(said).toContainText('Saved: Hours of the week')
  })

  await test.step('the ledger is backed up and says when', async () => {
    await hands.follow('Backups')
    await hands.push('Back up now')
    await expect(said).toContainText('Backed up as')
    await expect(
      page.getByRole('table', { name: 'Backups, the newest first' }).locator('tbody tr'),
    ).toHaveCount(1)
  })
})
