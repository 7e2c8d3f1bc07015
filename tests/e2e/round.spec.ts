import { expect, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { Hands } from './hands.ts'
import { type StartedShop, startShop } from './start-shop.ts'
import { workLedger } from './work-shop.ts'

const { shelf, bench, stores, measures } = en
const clocks = 20
/** The repair that is at the bench. */
const atBench = 2200 + clocks + 1
let work: Awaited<ReturnType<typeof workLedger>>
let shop: StartedShop
test.beforeAll(async () => {
  work = await workLedger(clocks)
  shop = await startShop({ ledger: work.file })
})
test.afterAll(async () => {
  await shop.close()
  work.remove()
})

test('the round, the bench and the stores are worked by keyboard alone', async ({ page }) => {
  const hands = new Hands(page)
  const heading = (name: string | RegExp) =>
    expect(page.getByRole('heading', { level: 1, name })).toBeVisible()
  await page.goto(shop.url)
  await heading(en.screens.pages.counter)

  await test.step('a round takes at most six presses a clock besides the figures', async () => {
    await hands.press('3')
    await heading(shelf.title)
    await hands.press('.')
    for (let n = 1; n <= clocks; n++) {
      await expect(page.getByText(shelf.reading.now(2200 + n), { exact: true })).toBeVisible()
      await expect(page.getByLabel(shelf.reading.error, { exact: true })).toBeFocused()
      const before = hands.presses
      await hands.write(`+0:${String(n).padStart(2, '0')}`)
      await hands.press('w')
      await hands.press('s')
      await hands.press('Enter')
      await expect(page.getByText(shelf.reading.said(2200 + n, `+${n} s`))).toBeVisible()
      expect(hands.presses - before).toBeLessThanOrEqual(6)
    }
    await expect(page.getByText(shelf.reading.done)).toBeVisible()
    await expect(page.getByText(`0 ${shelf.sums.due}`)).toBeVisible()
  })

  await test.step('what cannot be read stays in the line with what is wrong', async () => {
    await hands.write('fast')
    await hands.press('Enter')
    await expect(page.getByRole('alert')).toContainText('Write seconds fast or slow')
    await expect(page.getByLabel(shelf.reading.error, { exact: true })).toHaveValue('fat')
  })

  await test.step('a clock is worked on: cautions seen, labour clock started and stopped, a part used', async () => {
    await hands.press('Alt+2')
    await heading(bench.title)
    await hands.follow(String(atBench))
    await heading(new RegExp(`^${atBench}`))
    await hands.push(bench.card.acknowledge)
    await hands.push(en.tasks.clean)
    await expect(page.getByText(bench.labour.started(atBench, en.tasks.clean))).toBeVisible()
    await hands.push(bench.running.stop)
    // The clock may pass from one minute to the next between the two.
    const stopped = ['0 min', '1 min'].map(time => bench.running.stopped(atBench, time))
    await expect(page.getByText(new RegExp(stopped.join('|')))).toBeVisible()
    await hands.push(bench.parts.add)
    await hands.choose(bench.parts.part, 'Gut line · 5 in stock')
    await hands.fill(bench.parts.quantity, '1')
    await hands.push(bench.parts.send)
    await expect(page.getByText(bench.parts.said('Gut line', 4))).toBeVisible()
  })

  await test.step('it goes on the shelf, at a place that is added there', async () => {
    await hands.follow(bench.card.toShelf)
    await hands.fill(shelf.start.placeName, 'Hook 1')
    await hands.push(shelf.start.addPlace)
    await expect(page.getByRole('button', { name: shelf.start.send })).toBeVisible()
  })

  await test.step('a clock that is measured there is held against the room written down for the place', async () => {
    await hands.push(measures.open)
    const form = page.getByRole('form', { name: measures.title })
    await hands.to(form.getByLabel(measures.names.heightMm, { exact: true }))
    await hands.write('415')
    await hands.fill(measures.weight, '8.2')
    await hands.to(form.getByRole('button', { name: measures.send }))
    await hands.press('Enter')
    await expect(page.getByText(shelf.fit.clock('415 mm high, 8.2 kg'))).toBeVisible()
    await hands.to(page.locator('summary', { hasText: shelf.fit.open }))
    await hands.press('Enter')
    await hands.choose(shelf.fit.place, 'Hook 1')
    await hands.fill(measures.names.heightMm, '400')
    await hands.fill(shelf.fit.load, '8')
    await hands.push(shelf.fit.send)
    await expect(page.getByText(shelf.fit.room('400 mm high, bears 8 kg'))).toBeVisible()
    const hint = page.getByText(shelf.fit.advice)
    await expect(hint).toContainText(shelf.fit.misfits.heightMm)
    await expect(hint).toContainText(shelf.fit.misfits.load)
  })

  await test.step('it may be put there all the same', async () => {
    await hands.push(shelf.start.send)
    await expect(page.getByText(shelf.reading.now(atBench), { exact: true })).toBeVisible()
  })

  await test.step('the stores tell of the part used', async () => {
    await hands.press('Alt+5')
    await heading(stores.title)
    await hands.follow('4')
    await heading('Gut line')
    await expect(page.getByText(stores.page.onRepair(stores.page.kinds.used, atBench))).toBeVisible()
  })
})
