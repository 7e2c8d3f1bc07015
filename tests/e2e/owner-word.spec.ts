import type { Page } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { elsewhere, expect, test } from './at-the-counter.ts'
import { clearToAxe } from './clear-to-axe.ts'
import type { Hands } from './hands.ts'

const { repair: say, screens } = en
const field = (page: Page, name: string) => page.locator(`[name="${name}"]`)
const standing = (page: Page) => page.locator('.standing-bar')
const lines = [{ kind: 'labour', description: 'Service', quantity: '4', unit: '48.00' }]

/** A clock taken in, by somebody else; its repair's number and id. */
const taken = (page: Page, more: object = {}) =>
  elsewhere(page, 'counter/takeIn', {
    owner: { name: 'Odalys Wren', otherThan: [] },
    clock: { form: 'wall', maker: 'Tarn', trains: 1 },
    fault: 'Stops.',
    ...more,
  })

/** Answers the estimate that is out, by keyboard, with the arrow that leads to the answer. */
async function declines(hands: Hands, number: number, origin: string): Promise<void> {
  const { page } = hands
  await page.goto(`${origin}/counter/${number}/record-word`)
  await hands.to(page.getByRole('radio', { name: say.answers['go-ahead'] }))
  await hands.press('ArrowDown')
  await expect(page.getByRole('radio', { name: say.answers.declined })).toBeChecked()
  await hands.choose(say.wordForm.way, en.ways.telephone)
  await hands.fill(say.wordForm.remark, 'More than it is worth to me.')
  await hands.press('Control+Enter')
  await expect(page.getByRole('dialog')).toContainText(say.wordForm.asked.declined(number))
  await hands.agree(say.wordForm.send)
  await expect(standing(page)).toContainText(screens.stages.declined)
}

test('an estimate from low to high is written and sent, its word recorded with who, how, when and limit, by keyboard', async ({
  page,
  hands,
  shop,
}) => {
  const { number } = await taken(page, { low: '150.00', high: '260.00' })
  await page.goto(`${shop.origin}/counter/${number}/write-estimate`)
  await hands.to(field(page, 'lines[0].description'))
  await hands.write('Service of one train')
  await hands.to(field(page, 'lines[0].quantity'))
  await hands.press('ControlOrMeta+A')
  await hands.write('4')
  await hands.fill(new RegExp(`^${say.estimateForm.high.replace(/[()]/g, '.')}`), '280')
  await expect(page.getByText(say.leavesQuoted.above)).toBeVisible()
  await hands.press('Control+Enter')
  await hands.follow(screens.acts['send-estimate'])
  await hands.choose(say.sendForm.way, en.ways['e-mail'])
  await hands.press('Control+Enter')
  await hands.agree(say.sendForm.send)
  await expect(page.getByText(say.upTo('£280.00')).first()).toBeVisible()
  await hands.follow(screens.acts['record-word'])
  await hands.fill(say.wordForm.limit, '250')
  await clearToAxe(page)
  await hands.press('Control+Enter')
  await expect(page.getByRole('dialog')).toContainText(say.wordForm.asked['go-ahead'](number, '£250.00'))
  await hands.agree(say.wordForm.send)
  await expect(standing(page)).toContainText(screens.stages['go-ahead'])
  const word = page.getByRole('region', { name: say.sections.word })
  await expect(word).toContainText(say.limitTo('£250.00'))
  await expect(word).toContainText(/Odalys Wren, .*, 12 Mar 2027, /)
})

test('a clock declined goes home with its estimate’s fee, or with none, by keyboard', async ({
  page,
  hands,
  shop,
}) => {
  const { number, id: repairId } = await taken(page, { fee: '25.00' })
  const { id: estimateId } = await elsewhere(page, 'estimates/write', { repairId, lines })
  await elsewhere(page, 'estimates/send', { estimateId, way: 'e-mail' })

  await test.step('with a fee: the invoice starts from it, and the list has it to pay', async () => {
    await declines(hands, number, shop.origin)
    await page.goto(`${shop.origin}/counter`)
    await expect(page.getByRole('row', { name: new RegExp(`${number}.*30\\.00`) })).toBeVisible()
    await page.goto(`${shop.origin}/counter/${number}/invoice`)
    await expect(field(page, 'lines[0].unit')).toHaveValue('25.00')
    await hands.press('Control+Enter')
    await expect(page.getByRole('dialog')).toContainText(say.invoiceForm.asked('£30.00'))
    await hands.agree(say.invoiceForm.send)
    await expect(page.getByText(/^Invoice I\d+ is written; £30\.00 to pay/)).toBeVisible()
  })

  // Repair 2208 of the demonstration is out with an estimate, and no fee was told.
  await test.step('with none: it is handed over at once', async () => {
    await declines(hands, 2208, shop.origin)
    await hands.follow(screens.acts['hand-over'])
    const back = page.getByRole('group', { name: say.handOverForm.belongings }).getByRole('checkbox')
    for (let index = 0; index < (await back.count()); index++) {
      await hands.to(back.nth(index))
      await hands.press('Space')
    }
    await hands.press('Control+Enter')
    await hands.agree(say.handOverForm.send)
    await expect(standing(page)).toContainText(screens.stages.collected)
    await expect(page.getByText(say.noWarranty)).toBeVisible()
  })
})

test('two people at one repair: the second is shown the version, the word and the date of the first, and nothing is overwritten', async ({
  page,
  hands,
  shop,
}) => {
  const { number, id: repairId } = await taken(page)
  const act = (name: string) => page.goto(`${shop.origin}/counter/${number}/${name}`)
  const told = page.getByRole('alert')

  await test.step('a version written meanwhile', async () => {
    await act('write-estimate')
    await hands.to(field(page, 'lines[0].description'))
    await hands.write('Overhaul')
    const { id: estimateId } = await elsewhere(page, 'estimates/write', { repairId, lines })
    await hands.press('Control+Enter')
    await expect(told).toBeFocused()
    await expect(field(page, 'lines[0].description')).toHaveValue('Overhaul')
    await expect(page.getByRole('heading', { name: new RegExp(`${number}/1`) })).toBeVisible()
    await elsewhere(page, 'estimates/send', { estimateId, way: 'e-mail' })
  })

  await test.step('a word recorded meanwhile', async () => {
    await act('record-word')
    await hands.fill(say.wordForm.limit, '300')
    const { estimates } = await page.evaluate(
      async of => (await fetch(`/api/pages/repairs/${of}`)).json(),
      number,
    )
    const word = { estimateId: estimates[0].id, answer: 'go-ahead', who: 'Her brother', way: 'telephone' }
    await elsewhere(page, 'estimates/recordWord', word)
    await hands.press('Control+Enter')
    await expect(told).toContainText('Her brother')
    await expect(field(page, 'limit')).toHaveValue('300')
  })

  await test.step('a date changed meanwhile', async () => {
    await act('estimated-date')
    await field(page, 'estimatedOn').fill('2027-05-03')
    await elsewhere(page, 'counter/estimateDate', { repairId, estimatedOn: '2027-04-20' })
    await hands.press('Control+Enter')
    await expect(told).toBeFocused()
    await expect(field(page, 'estimatedOn')).toHaveValue('2027-05-03')
    await expect(page.getByText(/20 Apr/).first()).toBeVisible()
    await hands.press('Control+Enter')
    await expect(page.locator('.said')).toContainText(say.dateForm.said)
  })
})

test('what an owner is told can be copied, written as an e-mail, or printed as a letter', async ({
  page,
  hands,
  shop,
}) => {
  await page.goto(`${shop.origin}/counter/2203/tell-owner`)
  await hands.to(page.getByRole('link', { name: say.tellForm.mail }))
  const link = page.getByRole('link', { name: say.tellForm.mail })
  await expect(link).toHaveAttribute(
    'href',
    /^mailto:office@asterhouse\.example\?subject=Repair%202203.*&body=Dear%20Aster%20House%20School/,
  )
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write'])
  await hands.to(page.getByRole('button', { name: say.tellForm.copy }))
  await hands.press('Enter')
  await expect(page.locator('.said')).toContainText(say.tellForm.copied)
  expect(await page.evaluate(() => navigator.clipboard.readText())).toMatch(
    /^Dear Aster House School,[\s\S]*Repair 2203/,
  )
  await clearToAxe(page)
  await page.goto(`${shop.origin}/counter/2203`)
  await hands.to(page.getByRole('link', { name: en.papers.titles['ready-letter'] }))
})
