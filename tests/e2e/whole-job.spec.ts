import { expect, type Page } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { Hands } from './hands.ts'
import { onBothHosts } from './on-both-hosts.ts'

const { bench, counter, repair: say, screens } = en

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name })
const standing = (page: Page, words: string) =>
  expect(page.getByText(words, { exact: true }).first()).toBeVisible()

async function openTheShop(hands: Hands): Promise<void> {
  const { openShop } = screens
  await expect(heading(hands.page, openShop.heading)).toBeVisible()
  await hands.fill(openShop.name, 'Tallow Lane Clocks')
  await hands.fill(openShop.taxName, 'VAT')
  await hands.fill(openShop.taxRate, '20')
  await hands.fill(openShop.benchRate, '48.00')
  await hands.fill(openShop.person, 'Ines Marrow')
  await hands.push(openShop.act)
  await expect(heading(hands.page, screens.pages.counter)).toBeVisible()
}

async function takeIn(hands: Hands): Promise<void> {
  const { takeIn } = counter
  await hands.fill(counter.line.name, 'Rosamund Pell')
  await hands.press('Enter')
  await expect(heading(hands.page, takeIn.title)).toBeVisible()
  await hands.choose(takeIn.form, en.forms.bracket)
  await hands.fill(takeIn.maker, 'J. Ollerenshaw')
  await hands.fill(takeIn.serial, 'OL-2214')
  await hands.fill(takeIn.faultAsTold, 'Stops at the quarter.')
  await hands.press('Control+Enter')
  await expect(heading(hands.page, /^1 · bracket clock/)).toBeVisible()
  await standing(hands.page, 'taken in')
}

async function estimate(hands: Hands): Promise<void> {
  await hands.follow(screens.acts['write-estimate'])
  await hands.fill(say.work, 'Overhaul')
  await hands.fill(say.quantity, '7.5')
  await hands.press('Control+Enter')
  await hands.follow(screens.acts['send-estimate'])
  await hands.choose(say.sendForm.way, en.ways['e-mail'])
  await hands.press('Control+Enter')
  await hands.agree(say.sendForm.send)
  await standing(hands.page, 'estimate out')
  await hands.follow(screens.acts['record-word'])
  await hands.fill(say.wordForm.who, 'Rosamund Pell')
  await hands.press('Control+Enter')
  await hands.agree(say.wordForm.send)
  await standing(hands.page, 'go-ahead')
}

async function work(hands: Hands): Promise<void> {
  await hands.follow(screens.acts.work)
  await expect(heading(hands.page, /^1 · bracket clock/)).toBeVisible()
  await hands.push(bench.card.acknowledge)
  await hands.push(en.tasks.strip)
  await hands.push(bench.running.stop)
  await standing(hands.page, 'on the bench')
}

async function runIn(hands: Hands): Promise<void> {
  const { start, decide, reading } = en.shelf
  await hands.follow(bench.card.toShelf)
  await hands.fill(start.placeName, 'Shelf A1')
  await hands.push(start.addPlace)
  await hands.push(start.send)
  await hands.fill(reading.error, '+0:02')
  await hands.press('Enter')
  await expect(hands.page.getByText(reading.said(1, '+2 s'))).toBeVisible()
  await hands.push(decide.passAll)
  await hands.fill(decide.passReason, 'Ran for a fortnight before the ledger was begun.')
  await hands.press('Enter')
  await hands.agree(decide.passAll)
}

async function settle(hands: Hands): Promise<void> {
  await hands.press('Alt+1')
  await hands.fill(counter.line.name, '1')
  await hands.press('Enter')
  await standing(hands.page, 'ready')
  await hands.follow(screens.acts.invoice)
  await hands.press('Control+Enter')
  await hands.agree(say.invoiceForm.send)
  await expect(hands.page.getByText(/Invoice I0001 is written/)).toBeVisible()
  await hands.follow(say.payForm.act)
  await hands.press('Control+Enter')
  await hands.agree(say.payForm.send)
  await expect(hands.page.getByText(/Receipt R0001 is issued/)).toBeVisible()
  await hands.follow(screens.acts['hand-over'])
  await hands.press('Control+Enter')
  await hands.agree(say.handOverForm.send)
  await expect(hands.page.getByText(/warranty certificate W0001 is issued/)).toBeVisible()
}

async function findAgain(hands: Hands): Promise<void> {
  await hands.press('/')
  await hands.write('2214')
  await hands.found()
  await hands.press('ArrowDown')
  await hands.press('Enter')
  await expect(hands.page.getByText(/covered/i).first()).toBeVisible()
}

onBothHosts('a clock goes through the whole job by keyboard alone', async ({ page }) => {
  const hands = new Hands(page)
  await openTheShop(hands)
  await takeIn(hands)
  await estimate(hands)
  await work(hands)
  await runIn(hands)
  await settle(hands)
  await findAgain(hands)
})
