import { en } from '../../core/words/en/index.ts'
import { elsewhere, expect, test } from './at-the-counter.ts'
import { clearToAxe } from './clear-to-axe.ts'

const { people, save } = en.shop
const { who } = en.screens
const onlyOwner = /^Only an owner of the shop may do this\./

test('what is not everybody’s says to whom it is given, keeps what was typed, and opens for whoever may', async ({
  page,
  hands,
  shop,
}) => {
  await elsewhere(page, 'shop/addPerson', {
    name: 'Bram Tolland',
    roles: ['bench'],
    initials: '',
    benchHours: '',
  })
  await page.goto(`${shop.origin}/shop/prices`)
  const at = page.getByLabel(who.label)
  await at.selectOption('Ines Marrow')
  await hands.fill(en.shop.prices.benchRate, '51.50')
  await at.selectOption('Bram Tolland')
  await expect(page.getByText(onlyOwner)).toBeVisible()
  const rate = page.getByLabel(en.shop.prices.benchRate, { exact: true })
  await expect(rate).toBeDisabled()
  await expect(rate).toHaveValue('51.50')
  await expect(page.getByRole('button', { name: save, exact: true })).toBeDisabled()
  await clearToAxe(page)
  await at.selectOption('Ines Marrow')
  await hands.push(save)
  await expect(page.locator('.said')).toContainText(en.shop.saved(en.shop.groups.prices))
  await at.selectOption('Bram Tolland')
  await page.goto(`${shop.origin}/accounts/day-book`)
  await page.getByRole('link', { name: 'owners', exact: true }).focus()
  await hands.press('Enter')
  await expect(page.locator('.said')).toContainText(onlyOwner)
})

test('a person’s roles, initials and hours are changed by keyboard', async ({ page, hands, shop }) => {
  await page.goto(`${shop.origin}/shop/people`)
  await hands.push(`${en.shop.change} Tobias Vane`)
  await hands.to(page.getByRole('checkbox', { name: `${en.roles.owner}: ${people.rolesMay.owner}` }))
  await hands.press('Space')
  await hands.push(people.save)
  await expect(page.getByRole('alert')).toBeFocused()
  await hands.to(page.getByRole('checkbox', { name: `${en.roles.bench}: ${people.rolesMay.bench}` }))
  await hands.press('Space')
  await hands.fill(people.benchHours, '37.5')
  await hands.push(people.save)
  await expect(page.locator('.said')).toContainText(people.changed('Tobias Vane'))
  await expect(page.getByRole('row', { name: /Tobias Vane TV bench 37\.5/ })).toBeVisible()
  await clearToAxe(page)
})

test('another person is at the counter after two keys, and what is being typed stays', async ({
  page,
  shop,
}) => {
  await page.goto(shop.url)
  await page.goto(`${shop.origin}/shop/prices`)
  const rate = page.getByLabel(en.shop.prices.benchRate, { exact: true })
  const chosen = page.getByLabel(who.label).locator('option:checked')
  await rate.fill('51.50')
  await page.keyboard.press('Alt+0')
  const asked = page.getByRole('dialog', { name: who.ask })
  await expect(asked.getByRole('button', { name: 'Ines Marrow' })).toBeFocused()
  await clearToAxe(page)
  await page.keyboard.press('2')
  await expect(chosen).toHaveText('Tobias Vane')
  await expect(asked).toHaveCount(0)
  await expect(rate).toBeFocused()
  await expect(rate).toHaveValue('51.50')
  await page.keyboard.press('Alt+0')
  await page.keyboard.press('i')
  await expect(chosen).toHaveText('Ines Marrow')
  await page.keyboard.press('Alt+0')
  await page.keyboard.press('Escape')
  await expect(asked).toHaveCount(0)
  await expect(chosen).toHaveText('Ines Marrow')
})
