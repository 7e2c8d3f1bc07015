import { en } from '../../core/words/en/index.ts'
import { expect, test } from './at-the-counter.ts'

const { takeIn, line } = en.counter
const { likely, owner: ownerWords } = en.register

test.describe('taking in at counter speed', () => {
  test('takes a known owner’s second clock with at most 25 key presses besides the words', async ({
    page,
    hands,
  }) => {
    await hands.press('.')
    await hands.write('Quillf')
    await hands.press('Enter')
    const found = page.getByRole('option', { name: /Quillfeather/ }).first()
    await expect(async () => {
      if ((await found.count()) === 0) await hands.press('ArrowDown')
      await expect(found).toBeVisible({ timeout: 3_000 })
    }).toPass()
    // The key that opened the list may have pointed at the first already.
    await expect(async () => {
      if ((await found.getAttribute('aria-selected')) !== 'true') await hands.press('ArrowDown')
      await expect(found).toHaveAttribute('aria-selected', 'true', { timeout: 3_000 })
    }).toPass()
    await hands.press('Enter')
    await expect(page.getByRole('radio').first()).toBeFocused()
    await hands.press('ArrowDown')
    await expect(page.getByRole('radio', { name: takeIn.anotherClock })).toBeChecked()
    await hands.choose(takeIn.form, en.forms.carriage)
    await hands.fill(takeIn.faultAsTold, 'Gains.')
    await hands.press('Control+Enter')
    await expect(page.getByRole('heading', { level: 1, name: /carriage clock/ })).toBeVisible()
    expect(hands.presses).toBeLessThanOrEqual(25)
  })

  test('takes an unknown owner’s clock, telephone and belongings with at most 40', async ({
    page,
    hands,
  }) => {
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
  })

  test('keeps everything typed when it is refused, lists all problems at once, and leads to each field', async ({
    page,
    hands,
  }) => {
    await hands.fill(line.name, 'Cuthbert Lowe-Tarn')
    await hands.press('Enter')
    await expect(page.getByRole('heading', { level: 1, name: takeIn.title })).toBeVisible()
    await hands.fill(takeIn.phone, '12')
    await hands.fill(takeIn.email, 'nobody')
    await hands.fill(takeIn.maker, 'Tarn & Daughter')
    await hands.fill(takeIn.low, 'some')
    await hands.press('Control+Enter')
    const problems = page.getByRole('alert')
    await expect(problems.getByRole('link')).toHaveCount(4)
    expect(await problems.evaluate(list => list.contains(document.activeElement))).toBe(true)
    await expect(page.getByLabel(takeIn.maker, { exact: true })).toHaveValue('Tarn & Daughter')
    await hands.to(problems.getByRole('link', { name: /telephone/i }))
    await hands.press('Enter')
    await expect(page.getByLabel(takeIn.phone, { exact: true })).toBeFocused()
  })

  test('is not sent by Enter in a field of one line', async ({ page, hands }) => {
    await hands.fill(line.name, 'Cuthbert Lowe-Tarn')
    await hands.press('Enter')
    await hands.fill(takeIn.faultAsTold, 'Stops on Sundays.')
    await page.getByLabel(takeIn.phone, { exact: true }).focus()
    await hands.write('01632 960 777')
    await hands.press('Enter')
    await expect(page.getByLabel(takeIn.phone, { exact: true })).toBeFocused()
    await expect(page.getByRole('heading', { level: 1, name: takeIn.title })).toBeVisible()
    await hands.push(takeIn.send)
    await expect(page.getByRole('heading', { level: 1, name: /mantel clock/ })).toBeVisible()
  })
})

test.describe('an owner or a clock that may be on record', () => {
  test('is shown at the counter, and taken for the one on record or entered as another', async ({
    page,
    hands,
    shop,
  }) => {
    await page.goto(`${shop.origin}/counter/take-in?owner=petra%20wick`)
    await hands.fill(takeIn.faultAsTold, 'Stops.')
    await expect(page.getByRole('button', { name: likely.sameOwner('Petra Wick') })).toBeVisible()
    await hands.press('Control+Enter')
    await expect(page.getByRole('alert').getByRole('link')).toHaveCount(1)
    await hands.push(likely.otherOwner)
    await expect(page.getByRole('button', { name: likely.otherOwner })).toHaveCount(0)
    await hands.fill(takeIn.serial, 'TD118')
    await expect(page.getByRole('group', { name: likely.clock })).toContainText('Agnes Lindqvist')
    await hands.push(likely.sameClock('Agnes Lindqvist'))
    await expect(page.getByRole('radio', { name: /TD-118/ })).toBeChecked()
  })

  test('is shown on the Register, which leads to the owner on record', async ({ page, hands, shop }) => {
    await page.goto(`${shop.origin}/register/new-owner`)
    await hands.fill(en.register.ownerForm.name, 'P. W.')
    await hands.fill(en.register.ownerForm.phone, '01632960901')
    await hands.push(likely.sameOwner('Petra Wick'))
    await expect(page.getByRole('heading', { level: 1, name: 'Petra Wick' })).toBeVisible()
  })
})

test('an owner’s page begins a taking in with that owner chosen, and their clocks asked after', async ({
  page,
  hands,
  shop,
}) => {
  await page.goto(`${shop.origin}/register?afterName=Agnes&afterId=0`)
  await page
    .getByRole('row', { name: /Agnes Lindqvist/ })
    .getByRole('link')
    .click()
  await hands.follow(ownerWords.takeIn)
  await expect(page.getByRole('button', { name: takeIn.changeOwner })).toBeVisible()
  await expect(page.getByRole('radio', { name: /TD-118/ })).toBeFocused()
})

test('a comeback is opened from the clock’s page with its owner, clock and earlier repair chosen', async ({
  page,
  hands,
  shop,
}) => {
  await page.goto(`${shop.origin}/counter/take-in?comeback=2210`)
  await expect(page.getByRole('checkbox', { name: takeIn.comeback(2210) })).toBeChecked()
  await hands.fill(takeIn.faultAsTold, 'Stopped again.')
  await hands.press('Control+Enter')
  await expect(page.getByRole('heading', { level: 1, name: /mantel clock/ })).toBeVisible()
  await page.goto(`${shop.origin}/counter`)
  await expect(page.getByRole('row', { name: /Agnes Lindqvist/ })).toBeVisible()
})
