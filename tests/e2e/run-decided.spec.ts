import { expect, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { Hands } from './hands.ts'
import { type StartedShop, startShop } from './start-shop.ts'
import { dayMs, daysBefore, openAt, workLedger } from './work-shop.ts'

const { shelf } = en
const number = 2201
const daysAgo = 9

/** A clock that gained 80 s a day, and 40 s a day since its nut was turned once: what a turn does can be learned. */
const readings: readonly { error: string; nutTurns?: string }[] = [
  { error: '80' },
  { error: '160' },
  { error: '240', nutTurns: '1' },
  { error: '280' },
  { error: '320' },
  { error: '360' },
  { error: '400' },
]

/** Goes round once a day from the day after the run began. */
async function read(file: string): Promise<void> {
  const { clock, act, close } = openAt(file, daysBefore(daysAgo))
  for (const reading of readings) {
    clock.at = new Date(Date.parse(clock.at) + dayMs).toISOString()
    await act('shelf.read', { runId: 1, inBeat: true, ...reading })
  }
  await close()
}

let shop: StartedShop
let work: Awaited<ReturnType<typeof workLedger>>
test.beforeAll(async () => {
  work = await workLedger(1, daysAgo)
  await read(work.file)
  shop = await startShop({ ledger: work.file })
})
test.afterAll(async () => {
  await shop.close()
  work.remove()
})

test('a run is judged by its figures, begun again after a fault, and passed against the verdict with a reason only', async ({
  page,
}) => {
  const hands = new Hands(page)
  const figure = (words: string) =>
    page
      .locator('.figures > div')
      .filter({ has: page.getByText(words, { exact: true }) })
      .locator('b')
  const verdict = page.getByRole('region', { name: shelf.verdict }).first()
  await page.goto(shop.url)
  await page.goto(`${shop.origin}/shelf/${number}`)

  await test.step('the chart tells of the nut, and the figures what a turn does and how many are wanted', async () => {
    const chart = page.getByRole('img', { name: shelf.chart.label(number) })
    await expect(chart.getByText(shelf.chart.nut('1'))).toBeVisible()
    await expect(figure(shelf.figures.ratePerDay)).toContainText('+40 s ±')
    await expect(figure(shelf.figures.secondsPerDayPerTurn)).toHaveText('−40 s')
    await expect(figure(shelf.figures.suggestion)).toHaveText(shelf.figures.suggested.lower('1'))
    await expect(page.getByRole('row').filter({ hasText: en.seen.nut({ turns: '1' }) })).toHaveCount(1)
  })

  await test.step('blows are counted against those due at the hour on the dial, and what was wrong is named', async () => {
    await hands.press('.')
    await hands.write('+7:20')
    await hands.fill(shelf.reading.keyed('S', shelf.reading.struck), '9')
    await hands.fill(shelf.reading.atHour, '10')
    await hands.press('Enter')
    await expect(page.getByText(new RegExp(`^${number}: .* entered`))).toBeVisible()
    await expect(verdict).toContainText(shelf.wrongsHeading)
    await expect(verdict).toContainText(en.faults.miscounted({ expected: '10', heard: '9' }))
    await expect(
      page.getByRole('row').filter({ hasText: en.seen.hour({ counted: '9', shown: '10' }) }),
    ).toHaveCount(1)
    const sheet = page.getByRole('region', { name: en.soundSheet.heading })
    await expect(sheet.getByRole('listitem').filter({ hasText: '10' }).first()).toContainText(
      en.soundSheet.wrong,
    )
  })

  await test.step('begun again, the old run stays with its reason, its figures and its log', async () => {
    await hands.push(shelf.decide.restart)
    await hands.fill(shelf.decide.restartReason, 'Rack tail bent')
    await hands.press('Enter')
    await expect(page.getByText(shelf.decide.restartSaid(number))).toBeVisible()
    const before = page.getByRole('region', { name: shelf.before.heading })
    await hands.to(before.locator('summary'))
    await hands.press('Enter')
    await expect(before).toContainText('Rack tail bent')
    await expect(before).toContainText(shelf.figures.suggestion)
    await expect(
      before.getByRole('row').filter({ hasText: en.seen.hour({ counted: '9', shown: '10' }) }),
    ).toHaveCount(1)
  })

  await test.step('against the verdict it passes with a reason only', async () => {
    await hands.push(shelf.decide.passAll)
    await hands.to(page.getByLabel(shelf.decide.passReason, { exact: true }))
    await hands.press('Enter')
    await expect(page.getByRole('alert')).toContainText('Write why it passes all the same.')
    await hands.fill(shelf.decide.passReason, 'The owner moves abroad tomorrow')
    await hands.press('Enter')
    await hands.agree(shelf.decide.passAll)
    await expect(page.getByText(shelf.decide.passSaid(number))).toBeVisible()
    await page.goto(`${shop.origin}/counter/${number}`)
    await expect(page.locator('.standing-now')).toContainText(en.screens.stages.ready)
    const proved = page.getByRole('region', { name: en.repair.sections.runs, exact: true })
    await expect(proved.locator('summary')).toHaveCount(2)
    await hands.to(proved.locator('summary').last())
    await hands.press('Enter')
    await expect(proved.getByText('The owner moves abroad tomorrow')).toBeVisible()
    await expect(proved.getByRole('region', { name: shelf.verdict })).toBeVisible()
  })
})
