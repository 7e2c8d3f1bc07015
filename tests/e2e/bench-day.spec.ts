import { expect, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { Hands } from './hands.ts'
import { type StartedShop, startShop } from './start-shop.ts'

const { bench, shelf, figures } = en
let shop: StartedShop
test.beforeAll(async () => {
  shop = await startShop({ demo: true })
})
test.afterAll(() => shop.close())

test('a day at the bench: the queue dragged and keyed, a time as it is typed, a wait, where things are, the figures', async ({
  page,
}) => {
  const hands = new Hands(page)
  const numbers = () =>
    page
      .locator('[data-grip]')
      .evaluateAll(grips => grips.map(grip => grip.closest('tr')?.querySelector('.n')?.textContent))
  await page.goto(shop.url)

  await test.step('a line dragged by its dots takes the place of the line it is let go on; the keys move it back', async () => {
    await page.goto(`${shop.origin}/bench`)
    await expect(page.locator('[data-grip]').nth(1)).toBeVisible()
    const [first, second] = await numbers()
    const [from, onto] = [page.locator('[data-grip]').nth(0), page.locator('[data-grip]').nth(1)]
    await from.hover()
    await page.mouse.down()
    await onto.hover()
    await page.mouse.up()
    await expect(page.getByText(bench.line.moved(Number(first)))).toBeVisible()
    await expect.poll(numbers).toEqual(expect.arrayContaining([first, second]))
    await expect.poll(async () => (await numbers()).slice(0, 2)).toEqual([second, first])
    await page.getByRole('link', { name: String(first), exact: true }).focus()
    await expect(page.getByRole('link', { name: bench.line.open(Number(first)) })).toBeVisible()
    await page.keyboard.press('Alt+ArrowUp')
    await expect.poll(async () => (await numbers()).slice(0, 2)).toEqual([first, second])
  })

  await test.step('a time is read as it was typed, and says so', async () => {
    await page.goto(`${shop.origin}/bench/2212`)
    await hands.push(bench.labour.enter)
    await page.getByLabel(bench.labour.from, { exact: true }).fill('4 Mar 09:20')
    await expect(page.getByText(/read as 4 Mar 20\d\d, 09:20/)).toBeVisible()
    await page.getByLabel(bench.labour.to, { exact: true }).fill('noon')
    await hands.push(bench.labour.send)
    await expect(page.getByRole('alert').first()).toBeVisible()
    await expect(page.getByLabel(bench.labour.to, { exact: true })).toHaveValue('noon')
  })

  await test.step('a finding that needs the owner’s word stands among the waits as well', async () => {
    await page.goto(`${shop.origin}/bench/2212`)
    await hands.push(bench.findings.add)
    await page.getByLabel(bench.findings.text).fill('Second wheel pivot scored')
    await page.getByLabel(bench.findings.needsWord).check()
    await hands.push(bench.findings.send)
    await expect(page.getByText(bench.waits.onFinding('Second wheel pivot scored'))).toBeVisible()
    await expect(page.getByText(bench.waits.none)).toBeHidden()
  })

  await test.step('where everything is can be searched as it is typed', async () => {
    await page.goto(`${shop.origin}/shelf/where`)
    await page.getByLabel(shelf.where.search).fill('2205 torsion')
    await expect(page.getByRole('row', { name: /torsion/ })).toHaveCount(1)
    await page.getByLabel(shelf.where.search).fill('no such thing')
    await expect(page.getByText(shelf.where.none)).toBeVisible()
  })

  await test.step('the figures of a period stand as tables, each to be taken out', async () => {
    await page.goto(`${shop.origin}/accounts/figures?from=2027-01-01&to=2027-12-31`)
    await expect(page.getByRole('heading', { name: figures.hours.title })).toBeVisible()
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: new RegExp(figures.earned.title) }).click(),
    ])
    expect(download.suggestedFilename()).toBe('figures-earned-2027-01-01-2027-12-31.csv')
  })
})
