import { expect, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { Hands } from './hands.ts'
import { type StartedShop, startShop } from './start-shop.ts'
import { dayMs, daysBefore, openAt, workLedger } from './work-shop.ts'

const { bench, repair: say, screens, stores } = en
/** The repair of the work ledger that is agreed and not begun. */
const number = 2202

/** Starts Ines Marrow's labour clock two days ago, and leaves it running. */
async function leaveRunning(file: string): Promise<void> {
  const { act, close } = openAt(file, daysBefore(2), 1)
  await act('bench.startLabour', { repairId: 2, task: 'strip' })
  await close()
}

let shop: StartedShop
let work: Awaited<ReturnType<typeof workLedger>>
test.beforeAll(async () => {
  work = await workLedger(1)
  await leaveRunning(work.file)
  shop = await startShop({ ledger: work.file })
})
test.afterAll(async () => {
  await shop.close()
  work.remove()
})

test('work that grew is asked about, priced, agreed and only then billed, by keyboard alone', async ({
  page,
}) => {
  const hands = new Hands(page)
  const turnTo = async (path: string) => {
    await page.goto(`${shop.origin}${path}`)
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
  }
  const said = (words: string | RegExp) => expect(page.getByText(words).first()).toBeVisible()
  await page.goto(shop.url)
  await hands.choose(screens.who.label, 'Ines Marrow')

  await test.step('a labour clock left running overnight asks when the work ended', async () => {
    await turnTo(`/bench/${number}`)
    await said(bench.running.forgotten)
    const ended = new Date(Date.now() - 2 * dayMs + 45 * 60_000)
    const [day, time] = ended
      .toLocaleString('en-GB', {
        day: 'numeric',
        month: 'short',
        hour: '2-digit',
        minute: '2-digit',
        timeZone: 'Europe/London',
      })
      .split(', ')
    await hands.fill(bench.running.endedAt, `${day} ${time}`)
    await hands.push(bench.running.stopThen)
    await said(/^Stopped: /)
  })

  await test.step('a part’s price follows from its cost by the shop’s markup', async () => {
    await turnTo('/stores/new')
    await hands.choose(stores.form.kind, en.partKinds.mainspring)
    await hands.fill(stores.form.name, 'Mainspring of the going train')
    await hands.fill(stores.form.unitCost, '40.00')
    await hands.to(page.getByRole('button', { name: /markup|£/ }).first())
    await hands.press('Enter')
    await expect(page.getByLabel(stores.form.unitPrice, { exact: true })).not.toHaveValue('')
  })

  await test.step('its sizes are typed one after the other, each line offering the next usual dimension', async () => {
    const sizes = page.getByLabel(stores.form.sizeValue, { exact: true })
    await hands.to(sizes.first())
    await hands.write('19')
    await hands.to(sizes.nth(1))
    await hands.write('0.4')
    await hands.push(stores.form.send)
    await said('height 19 mm, thickness 0.4 mm')
  })

  await test.step('a part beyond what the owner agreed to is refused, and taken at the shop’s cost', async () => {
    await turnTo(`/bench/${number}`)
    await hands.push(bench.parts.add)
    await hands.choose(bench.parts.part, `Gut line · ${bench.parts.inStock(5)}`)
    await hands.fill(bench.parts.quantity, '4')
    await hands.push(bench.parts.send)
    await said(/With this part the bill would come to/)
    await hands.to(page.getByLabel(bench.parts.atShopsCost))
    await hands.press('Space')
    await hands.push(bench.parts.send)
    await said(/Gut line: taken/)
  })

  await test.step('what was found is priced on a supplement, sent and agreed', async () => {
    await hands.push(bench.findings.add)
    await hands.fill(bench.findings.text, 'Third wheel pivot worn')
    await hands.to(page.getByLabel(bench.findings.needsWord))
    await hands.press('Space')
    await hands.push(bench.findings.send)
    await said(bench.findings.saidWaiting)
    await hands.follow(bench.card.toSupplement)
    await said('Third wheel pivot worn')
    await hands.fill(say.work, 'Repivoting')
    await hands.fill(say.quantity, '2')
    await hands.press('Control+Enter')
    await hands.follow(screens.acts['send-estimate'])
    await hands.choose(say.sendForm.way, en.ways.telephone)
    await hands.press('Control+Enter')
    await hands.agree(say.sendForm.send)
    await hands.follow(screens.acts['record-word'])
    await hands.fill(say.wordForm.who, 'Owner 2')
    await hands.press('Control+Enter')
    await hands.agree(say.wordForm.send)
    await expect(page.locator('.standing-bar')).toContainText(screens.stages['on-the-bench'])
  })
})
