import { expect, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { Hands } from './hands.ts'
import { startShop } from './start-shop.ts'

const { takeIn, line } = en.counter

test.describe('taking in at counter speed', () => {
  test('takes a known owner’s second clock with at most 25 key presses besides the words', async ({
    page,
  }) => {
    const shop = await startShop({ demo: true })
    try {
      await page.goto(`${shop.url}`)
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
      const hands = new Hands(page)
      await hands.press('.')
      await hands.write('Quillf')
      await hands.press('Enter')
      const found = page.getByRole('option', { name: /Quillfeather/ }).first()
      await expect(async () => {
        if ((await found.count()) === 0) await hands.press('ArrowDown')
        await expect(found).toBeVisible({ timeout: 3_000 })
      }).toPass()
      await hands.press('ArrowDown')
      await hands.press('Enter')
      await expect(page.getByRole('radio').first()).toBeFocused()
      await hands.press('ArrowDown')
      await expect(page.getByRole('radio', { name: takeIn.anotherClock })).toBeChecked()
      await hands.choose(takeIn.form, en.forms.carriage)
      await hands.fill(takeIn.faultAsTold, 'Gains.')
      await hands.press('Control+Enter')
      await expect(page.getByRole('heading', { level: 1, name: /carriage clock/ })).toBeVisible()
      expect(hands.presses).toBeLessThanOrEqual(25)
    } finally {
      await shop.close()
    }
  })

  test('takes an unknown owner’s clock, telephone and belongings with at most 40', async ({ page }) => {
    const shop = await startShop({ demo: true })
    try {
      await page.goto(`${shop.url}`)
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
      const hands = new Hands(page)
      await hands.press('.')
      await hands.write('Cuthbert Lowe-Tarn')
      await hands.press('Enter')
      await expect(page.getByRole('heading', { level: 1, name: takeIn.title })).toBeVisible()
      await hands.fill(takeIn.phone, '01632 960 777')
      await hands.choose(takeIn.form, en.forms.wall)
      await hands.fill(takeIn.maker, 'Tarn & Daughter')
      await hands.fill(takeIn.faultAsTold, 'Stops on Sundays.')
      await hands.press('Control+Enter')
      await expect(page.getByRole('heading', { level: 1, name: /wall clock/ })).toBeVisible()
      expect(hands.presses).toBeLessThanOrEqual(40)
    } finally {
      await shop.close()
    }
  })

  test('keeps everything typed when it is refused, lists each problem, and leads to the field', async ({
    page,
  }) => {
    const shop = await startShop({ demo: true })
    try {
      await page.goto(`${shop.url}`)
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
      const hands = new Hands(page)
      await hands.fill(line.name, 'Cuthbert Lowe-Tarn')
      await hands.press('Enter')
      await expect(page.getByRole('heading', { level: 1, name: takeIn.title })).toBeVisible()
      await hands.fill(takeIn.phone, '12')
      await hands.fill(takeIn.maker, 'Tarn & Daughter')
      await hands.press('Control+Enter')
      const problems = page.getByRole('alert')
      await expect(problems).toBeVisible()
      await expect(problems.getByRole('link')).toHaveCount(1)
      expect(await problems.evaluate(list => list.contains(document.activeElement))).toBe(true)
      await expect(page.getByLabel(takeIn.maker, { exact: true })).toHaveValue('Tarn & Daughter')
      await hands.fill(takeIn.faultAsTold, 'Stops on Sundays.')
      await hands.press('Control+Enter')
      await expect(problems.getByRole('link', { name: /telephone/i })).toBeVisible()
      await hands.to(problems.getByRole('link').first())
      await hands.press('Enter')
      await expect(page.getByLabel(takeIn.phone, { exact: true })).toBeFocused()
    } finally {
      await shop.close()
    }
  })
})

test('a comeback is opened from the clock’s page with its owner, clock and earlier repair chosen', async ({
  page,
}) => {
  const shop = await startShop({ demo: true })
  try {
    await page.goto(`${shop.url}`)
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
    await page.goto(`${shop.origin}/counter/take-in?comeback=2210&owner=Agnes%20Lindqvist`)
    await expect(page.getByRole('checkbox', { name: takeIn.comeback(2210) })).toBeChecked()
    const hands = new Hands(page)
    await hands.fill(takeIn.faultAsTold, 'Stopped again.')
    await hands.press('Control+Enter')
    await expect(page.getByRole('heading', { level: 1, name: /mantel clock/ })).toBeVisible()
    await page.goto(`${shop.origin}/counter`)
    await expect(page.getByRole('row', { name: /Agnes Lindqvist/ })).toBeVisible()
  } finally {
    await shop.close()
  }
})
