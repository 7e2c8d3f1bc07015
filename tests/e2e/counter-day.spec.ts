import { once } from 'node:events'
import type { Page } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { elsewhere, expect, test } from './at-the-counter.ts'
import { clearToAxe } from './clear-to-axe.ts'
import { Hands } from './hands.ts'
import { startShop } from './start-shop.ts'
import { workLedger } from './work-shop.ts'

const { counter, register, repair: say, screens } = en
const { takeIn } = counter
const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name })
const field = (page: Page, name: string) => page.locator(`[name="${name}"]`)
const said = (page: Page) => page.locator('.said')

/** What is kept of takings in that are not finished. */
const kept = (page: Page) =>
  page.evaluate(async () => {
    const { drafts } = await (await fetch('/api/drafts?page=take-in')).json()
    const bodies = drafts.map(async ({ key }: { key: string }) => (await fetch(`/api/drafts/${key}`)).text())
    return (await Promise.all(bodies)).join('\n')
  })

test('what is typed while a clock is taken in is there again after a kill −9, several side by side', async ({
  page,
}) => {
  const { file, remove } = await workLedger(1)
  const first = await startShop({ ledger: file })
  const hands = new Hands(page)
  const begin = async (origin: string, name: string, fault: string) => {
    await page.goto(`${origin}/counter`)
    await hands.fill(counter.line.name, name)
    await hands.press('Enter')
    await expect(heading(page, takeIn.title)).toBeVisible()
    await hands.fill(takeIn.faultAsTold, fault)
    await expect.poll(() => kept(page)).toContain(fault)
  }
  await page.goto(first.url)
  await begin(first.origin, 'Odalys Wren', 'Stops on Sundays.')
  await begin(first.origin, 'Maud Hart', 'Gains an hour.')
  first.process.kill('SIGKILL')
  await once(first.process, 'exit')
  const second = await startShop({ ledger: file })
  try {
    await page.goto(second.url)
    const begun = page.getByRole('region', { name: counter.begun })
    await expect(begun.getByRole('link')).toHaveCount(2)
    await hands.follow('Odalys Wren')
    await expect(field(page, 'owner.name')).toHaveValue('Odalys Wren')
    await expect(field(page, 'fault')).toHaveValue('Stops on Sundays.')
    await hands.press('Control+Enter')
    await expect(heading(page, /mantel clock/)).toBeVisible()
    await page.goto(`${second.origin}/counter`)
    await expect(begun.getByRole('link')).toHaveText(['Maud Hart'])
  } finally {
    await second.close()
    remove()
  }
})

test('a clock does not go while a belonging is neither ticked back nor accounted for with a reason', async ({
  page,
  hands,
  shop,
}) => {
  const { handOverForm } = say
  await page.goto(`${shop.origin}/counter/2202/hand-over`)
  const back = page.getByRole('group', { name: handOverForm.belongings })
  await hands.to(back.getByRole('checkbox').first())
  const count = await back.getByRole('checkbox').count()
  await hands.press('Control+Enter')
  await expect(page.getByRole('alert').getByRole('listitem')).toHaveCount(count)
  for (let index = 1; index < count; index++) {
    await hands.to(back.getByRole('checkbox').nth(index))
    await hands.press('Space')
  }
  await hands.press('Control+Enter')
  await expect(page.getByRole('alert').getByRole('listitem')).toHaveCount(1)
  await hands.to(back.locator('summary'))
  await hands.press('Enter')
  await hands.to(back.getByRole('textbox'))
  await hands.write('Sent ahead by carrier.')
  await hands.press('Control+Enter')
  await hands.agree(handOverForm.send)
  await expect(page.getByText(screens.stages.collected, { exact: true }).first()).toBeVisible()
})

test('an owner is told by a message from a template, which the repair keeps as it was said', async ({
  page,
  hands,
  shop,
}) => {
  const { tellForm } = say
  await page.goto(`${shop.origin}/counter/2209/tell-owner`)
  await expect(field(page, 'text')).toHaveValue(/Petra Wick/)
  await expect(field(page, 'text')).toHaveValue(/2209/)
  await hands.to(field(page, 'text'))
  await hands.press('ControlOrMeta+End')
  await hands.write(' The key is with us.')
  await hands.press('Control+Enter')
  await expect(said(page)).toContainText(tellForm.said)
  await hands.to(page.locator('summary', { hasText: en.messageAbouts.ready }))
  await hands.press('Enter')
  await expect(page.getByText(/The key is with us\./)).toBeVisible()
  await page.goto(`${shop.origin}/counter`)
  await expect(page.getByRole('row', { name: /2209.*owner told/ })).toBeVisible()
})

// Repair 2213 of the demonstration waits for parts; 2202 has stood ready since 25 February, a fortnight.
test('the list has comebacks first, parts that are in, and the long uncollected with the word that local law comes first', async ({
  page,
  hands,
  shop,
}) => {
  await elsewhere(page, 'shop/changeSettings', { collection: { uncollectedDays: 10 } })
  const { parts } = await page.evaluate(async () => (await fetch('/api/pages/stores')).json())
  const { repair } = await page.evaluate(async () => (await fetch('/api/pages/repairs/2213')).json())
  const order = { partId: parts[0].id, repairId: repair.id, quantity: 1 }
  const { id: orderId } = await elsewhere(page, 'stores/order', order)
  await elsewhere(page, 'stores/arrive', { orderId })
  await page.goto(`${shop.origin}/counter`)
  const titles = page.locator('tr.group')
  await expect(titles.first()).toHaveText(counter.groups.comeback)
  await expect(titles.filter({ hasText: counter.groups['parts-in'] })).toHaveCount(1)
  const uncollected = page.getByRole('row', { name: new RegExp(`2202.*${counter.uncollected}`) })
  await expect(uncollected).toBeVisible()
  await hands.fill(counter.line.name, '2202')
  await hands.press('Enter')
  await expect(page.getByRole('complementary', { name: say.uncollected })).toContainText(
    en.shop.uncollected.lawAdvice,
  )
  await clearToAxe(page)
  await hands.to(page.locator('summary', { hasText: say.otherActs }))
  await hands.press('Enter')
  await hands.follow(say.tellForm.act)
  await expect(field(page, 'text')).toHaveValue(/is still with us/)
})

test('the estimated date is reckoned, its bench days and its run-in told apart', async ({
  page,
  hands,
  shop,
}) => {
  const { dateForm } = say
  await page.goto(`${shop.origin}/counter/2215/estimated-date`)
  const reckoned = page.getByRole('region', { name: dateForm.reckoned })
  await expect(reckoned.getByText(dateForm.parts.bench)).toBeVisible()
  await expect(reckoned.getByText(dateForm.parts['running-in'])).toBeVisible()
  await hands.push(/^Take /)
  await expect(field(page, 'estimatedOn')).not.toHaveValue('')
  await hands.press('Control+Enter')
  await expect(said(page)).toContainText(dateForm.said)
})

test('while a clock is taken in its date is reckoned, and taken over by a key', async ({
  page,
  hands,
  shop,
}) => {
  await page.goto(`${shop.origin}/counter/take-in?owner=Odalys%20Wren`)
  await hands.choose(takeIn.form, en.forms.longcase)
  await hands.choose(takeIn.scope, en.scopes.overhaul)
  const reckoned = page.getByRole('region', { name: takeIn.reckoned })
  await expect(reckoned.getByText(say.dateForm.parts.queue)).toBeVisible()
  await expect(reckoned.getByText(say.dateForm.parts['running-in'])).toBeVisible()
  await hands.push(/^Take \d/)
  await expect(field(page, 'estimatedOn')).toHaveValue(/^2027-/)
  await hands.fill(takeIn.faultAsTold, 'Stops.')
  await hands.press('Control+Enter')
  await expect(heading(page, /longcase clock/)).toBeVisible()
  await expect(page.getByText(/^\d+ \w+ estimated$/)).toBeVisible()
})

test('one find leads to a clock’s history and whether its warranty covers today, and to its change of owner', async ({
  page,
  hands,
}) => {
  const { clock, passForm } = register
  await hands.press('/')
  await hands.write('OL-2214')
  const list = await hands.found()
  const clockLine = list.getByRole('option', { name: /bracket clock.*clock$/ })
  await expect(clockLine).toBeVisible()
  await clockLine.click()
  await expect(heading(page, /OL-2214/)).toBeVisible()
  const cover = page.getByRole('region', { name: clock.warranty })
  await expect(cover.getByText(clock.covered(2201))).toBeVisible()
  await expect(cover.getByRole('list', { name: clock.why }).getByRole('listitem').first()).toBeVisible()
  await expect(cover.getByText(clock.inShop(2211))).toBeVisible()
  await expect(page.getByText(clock.comesBackOf(2201))).toBeVisible()
  await hands.to(page.getByRole('region', { name: clock.description }).locator('summary').last())
  await hands.press('Enter')
  await hands.follow(clock.pass)
  await hands.write('Petra')
  await hands.found()
  await hands.press('ArrowDown')
  await hands.press('Enter')
  await hands.push(passForm.send)
  await expect(page.getByRole('dialog')).toContainText(passForm.ask('Petra Wick'))
  await hands.agree(passForm.send)
  await expect(said(page)).toContainText(passForm.said('Petra Wick'))
  await expect(page.getByText(clock.inShop(2211))).toBeVisible()
})

test('a new shop is proposed the money, the time zone and the way of writing of its country', async ({
  page,
}) => {
  const { openShop } = screens
  const shop = await startShop()
  const hands = new Hands(page)
  try {
    await page.goto(shop.url)
    await hands.choose(openShop.country, 'Ireland')
    await expect(field(page, 'settings.place.currency')).toHaveValue('EUR')
    await expect(field(page, 'settings.place.timeZone')).toHaveValue('Europe/Dublin')
    await expect(field(page, 'settings.place.locale')).toHaveValue('en-IE')
    await expect(field(page, 'settings.place.locale').locator('option:checked')).toHaveText(
      'English (Ireland) · en-IE',
    )
  } finally {
    await shop.close()
  }
})
