import { expect, type Page, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { clearToAxe } from './clear-to-axe.ts'
import { Hands } from './hands.ts'
import { type StartedShop, startShop } from './start-shop.ts'

const { repair: say, screens } = en

let shop: StartedShop
test.beforeAll(async () => {
  shop = await startShop({ demo: true })
})
test.afterAll(() => shop.close())

const standing = (page: Page, words: string) =>
  expect(page.getByText(words, { exact: true }).first()).toBeVisible()

/** Whether the words about a repair are there, whatever stands around them. */
const said = (page: Page, words: string) => expect(page.getByText(words).first()).toBeVisible()

/** A second clock of the owner of repair 2214, taken in; its number. */
const secondClock = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const { owner } = await (await fetch('/api/pages/repairs/2214')).json()
    const answer = await fetch('/api/counter/takeIn', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({
        owner: { id: owner.id },
        clock: { form: 'carriage', maker: 'Aubin', trains: 1, power: 'spring', duration: '8-day' },
        fault: 'Runs for a day, then stops.',
        high: '120',
      }),
    })
    return (await answer.json()).number
  })

test('two clocks stand on one estimate: one is accepted and invoiced, the other declined, by keyboard alone', async ({
  page,
}) => {
  const hands = new Hands(page)
  await page.goto(shop.url)
  const second = await secondClock(page)
  const field = (name: string) => page.locator(`[name="${name}"]`)
  const go = (number: number, act = '') => page.goto(`${shop.origin}/counter/${number}${act && `/${act}`}`)

  await test.step('the second clock is added while the estimate is written', async () => {
    await go(2214, 'write-estimate')
    await hands.to(field('lines[0].description'))
    await hands.write('Overhaul of two trains')
    await hands.to(field('lines[0].quantity'))
    await hands.press('ControlOrMeta+A')
    await hands.write('5')
    await hands.push(say.estimateForm.joinIt)
    await expect(field('others[0].lines[0].description')).toBeFocused()
    await hands.write('Service of one train')
    await hands.to(field('others[0].lines[0].quantity'))
    await hands.press('ControlOrMeta+A')
    await hands.write('3')
    // 240.00 and 144.00, each with 20 %: 288.00 and 172.80.
    await said(page, '£460.80')
    await said(page, say.leavesQuoted.above)
    await clearToAxe(page)
    await hands.press('Control+Enter')
    await said(page, say.estimateForm.said('2214/1', '£460.80'))
  })

  await test.step('it is sent once, from the page of the second', async () => {
    await go(second, 'send-estimate')
    await hands.choose(say.sendForm.way, en.ways['e-mail'])
    await hands.press('Control+Enter')
    await expect(page.getByRole('dialog')).toContainText(say.sendForm.several(2))
    await hands.agree(say.sendForm.send)
    await standing(page, 'estimate out')
    await said(page, say.onThisEstimate)
    await clearToAxe(page)
  })

  await test.step('the owner’s word on both is recorded at once, the sums in sight', async () => {
    await go(2214, 'record-word')
    await said(page, say.wordForm.comesTo('£460.80'))
    await said(page, say.comesTo('£172.80'))
    const beside = page.getByRole('group', { name: new RegExp(`^${second} `) })
    await hands.to(beside.getByRole('radio', { name: say.wordForm.notSaid }))
    await hands.press('ArrowLeft')
    await expect(beside.getByRole('radio', { name: say.answers.declined })).toBeChecked()
    await hands.to(field('limit'))
    await hands.write('300')
    await clearToAxe(page)
    await hands.press('Control+Enter')
    await expect(page.getByRole('dialog')).toContainText(say.wordForm.asked['go-ahead'](2214, '£300.00'))
    await expect(page.getByRole('dialog')).toContainText(say.wordForm.asked.declined(second))
    await hands.agree(say.wordForm.send)
    await standing(page, 'go-ahead')
  })

  await test.step('the first is finished and invoiced as agreed', async () => {
    await go(2214, 'declare-ready')
    await hands.fill(say.readyForm.reason, 'Ran for a week on the bench.')
    await hands.press('Control+Enter')
    await standing(page, 'ready')
    await hands.follow(screens.acts.invoice)
    await expect(field('lines[0].description')).toHaveValue('Overhaul of two trains')
    await said(page, say.invoiceForm.origins.agreed)
    await hands.press('Control+Enter')
    await expect(page.getByRole('dialog')).toContainText(say.invoiceForm.asked('£288.00'))
    await hands.agree(say.invoiceForm.send)
    await said(page, '£288.00')
  })

  await test.step('the second goes home unrepaired, and shows the estimate it was on', async () => {
    await go(second)
    await standing(page, screens.stages.declined)
    await expect(page.getByRole('heading', { name: 'Estimate 2214/1' })).toBeVisible()
  })
})
