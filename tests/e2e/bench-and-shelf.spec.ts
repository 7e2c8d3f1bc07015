import { expect, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { Hands } from './hands.ts'
import { type StartedShop, startShop } from './start-shop.ts'

const { bench, shelf, stores } = en
let shop: StartedShop
test.beforeAll(async () => {
  shop = await startShop({ demo: true })
})
test.afterAll(() => shop.close())

test('what is found, sent out, ordered, measured and decided is done by keyboard alone', async ({ page }) => {
  const hands = new Hands(page)
  const turnTo = async (path: string) => {
    await page.goto(`${shop.origin}${path}`)
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
  }
  const said = (words: string | RegExp) => expect(page.getByText(words).first()).toBeVisible()
  await page.goto(shop.url)

  await test.step('a mark written down before the strip stands again beside its step of the assembly', async () => {
    const mark = 'Pin six under the second hammer tail'
    await turnTo('/bench/2212')
    await hands.push(bench.service.addMark)
    await hands.fill(bench.service.text, mark)
    await hands.push(bench.service.send)
    await said(bench.service.said)
    await hands.to(page.locator('summary', { hasText: bench.service.steps }))
    await hands.press('Enter')
    const step = (words: string) => page.locator('.steps > li', { hasText: words })
    await expect(step(bench.steps.assemble)).toContainText(mark)
    await expect(step(bench.steps.clean)).toContainText(en.stepCautions.alcohol)
  })

  await test.step('a labour clock runs on one repair at a time: another is started when the first is stopped', async () => {
    await hands.push(en.tasks.assemble)
    await said(bench.labour.started(2212, en.tasks.assemble))
    await turnTo('/bench/2215')
    await hands.push(bench.card.acknowledge)
    await hands.push(en.tasks['let-down'])
    await hands.push(bench.labour.switch)
    await said(bench.labour.started(2215, en.tasks['let-down']))
    await hands.push(bench.running.stop)
    await said(/^Stopped: /)
  })

  await test.step('work goes out with its day, and comes back with its cost', async () => {
    await hands.push(bench.outside.add)
    await hands.fill(bench.outside.vendor, 'Lockgate Dials')
    await hands.fill(bench.outside.description, 'New chapter ring')
    await hands.push(bench.outside.send)
    await said(bench.outside.said('Lockgate Dials'))
    await hands.push(bench.outside.takeBackOf('New chapter ring'))
    await hands.push(bench.outside.takeBack)
    await said(bench.outside.backSaid)
  })

  await test.step('a finding that needs the owner’s word leads to its supplement', async () => {
    await hands.push(bench.findings.add)
    await hands.fill(bench.findings.text, 'Barrel hook cracked')
    await hands.to(page.getByLabel(bench.findings.needsWord))
    await hands.press('Space')
    await hands.push(bench.findings.send)
    await said(bench.findings.saidWaiting)
    await hands.follow(bench.card.toSupplement)
    await expect(page).toHaveURL(/\/counter\/2215\/write-estimate$/)
    await said('Barrel hook cracked')
  })

  await test.step('a mainspring is found for a barrel, with turns, fill and days', async () => {
    await turnTo('/stores/springs')
    await said(stores.springs.advice)
    await hands.fill(stores.springs.barrel, '38')
    await hands.fill(stores.springs.arbor, '12')
    await hands.fill(stores.springs.height, '20')
    await hands.fill(stores.springs.hoursPerTurn, '18')
    await hands.push(stores.springs.find)
    await expect(page.getByRole('row', { name: /Mainspring, going and strike/ })).toContainText('%')
  })

  await test.step('an order arrives, and a count says why it differs', async () => {
    await turnTo('/stores')
    await hands.push(stores.orders.arriveOf('Mainspring, carriage clock'))
    await hands.push(stores.orders.send)
    await said(stores.orders.said(4))
    await turnTo('/stores/1')
    await hands.push(stores.page.count)
    await hands.fill(stores.page.counted, '2')
    await hands.fill(stores.page.countNote, 'Four rusted in the drawer')
    await hands.push(stores.page.count)
    await said(stores.page.countedSaid(2))
  })

  await test.step('a part that has come down to the number it is ordered at stands among those to order', async () => {
    await turnTo('/stores')
    const toOrder = page.locator('tbody', { has: page.getByRole('rowheader', { name: stores.toOrder }) })
    await expect(toOrder).toContainText('Mainspring, going and strike')
  })

  await test.step('the computer’s clock is compared with a reference', async () => {
    await turnTo('/shelf/2211')
    await hands.to(page.locator('summary', { hasText: shelf.computer.compare }))
    await hands.press('Enter')
    await hands.fill(shelf.computer.error, '+2')
    await hands.fill(shelf.computer.reference, 'radio time signal')
    await hands.push(shelf.computer.send)
    await said(shelf.computer.said('+2 s'))
  })

  await test.step('a reading is corrected by a new one; the old one stays legible', async () => {
    const log = page.getByRole('region', { name: shelf.log.heading })
    await hands.to(log.getByRole('button', { name: /^Correct the reading/ }).first())
    await hands.press('Enter')
    const form = page.getByRole('form', { name: /^Correct the reading/ })
    await expect(form).toBeVisible()
    await hands.to(form.getByLabel(shelf.reading.error, { exact: true }))
    await hands.press('ControlOrMeta+A')
    await hands.write('+14')
    await hands.press('Enter')
    await said(shelf.log.correctSaid)
    await expect(log).toContainText(shelf.log.correctionOf)
    await expect(log.locator('s', { hasText: '+16 s' })).toBeVisible()
  })

  await test.step('a clock is moved to a free place, and a test begun again keeps its first run', async () => {
    await hands.push(shelf.decide.move)
    await hands.choose(shelf.decide.moveTo, 'Shelf A2')
    await hands.to(page.getByRole('form', { name: shelf.decide.move }).getByRole('button').first())
    await hands.press('Enter')
    await said(shelf.decide.moveSaid(2211, 'Shelf A2'))
    await hands.push(shelf.decide.restart)
    await hands.fill(shelf.decide.restartReason, 'Chime flirt eased')
    await hands.to(page.getByRole('form', { name: shelf.decide.restart }).getByRole('button').first())
    await hands.press('Enter')
    await said(shelf.decide.restartSaid(2211))
    const before = page.getByRole('region', { name: shelf.before.heading })
    await hands.to(before.locator('summary'))
    await hands.press('Enter')
    await expect(before).toContainText('Chime flirt eased')
    await expect(before.locator('s', { hasText: '+16 s' })).toBeVisible()
  })

  await test.step('the turn of the day stands on one sheet', async () => {
    await turnTo('/bench/today')
    for (const list of [bench.today.toCollect, bench.today.toAsk, bench.today.outsideLate])
      await expect(page.getByRole('heading', { name: list })).toBeVisible()
  })
})
