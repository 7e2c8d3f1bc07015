import { expect, test } from '@playwright/test'
import { type StartedShop, startShop } from './start-shop.ts'

let shop: StartedShop

test.beforeEach(async () => {
  shop = await startShop()
})
test.afterEach(() => shop.close())

test('the printed address opens the ledger, and its key is in neither the address bar nor the history', async ({
  page,
}) => {
  await page.goto(shop.url)
  await expect(page).toHaveTitle(/Countwheel/)
  expect(page.url()).not.toContain(shop.key)
  expect(await page.evaluate(() => `${document.referrer}${location.href}`)).not.toContain(shop.key)
  await page.goto(`${shop.origin}/register`)
  await page.goBack()
  expect(page.url()).not.toContain(shop.key)
  await page.goBack()
  expect(page.url()).toBe('about:blank')
})

test('the same browser comes in again by the printed address; another one is told how', async ({
  page,
  browser,
}) => {
  await page.goto(shop.url)
  await page.goto('about:blank')
  expect((await page.goto(shop.url))?.status()).toBe(200)
  const other = await (await browser.newContext()).newPage()
  expect((await other.goto(shop.url))?.status()).toBe(401)
  await expect(other.getByRole('heading')).toHaveText('The ledger is closed to this browser')
  await other.context().close()
})

test('the pages can neither run foreign scripts nor be framed', async ({ page }) => {
  const complaints: string[] = []
  page.on('console', message => complaints.push(message.text()))
  await page.goto(shop.url)
  expect(complaints.filter(text => text.includes('Content Security Policy'))).toEqual([])
  const ran = await page.evaluate(() => {
    const script = document.createElement('script')
    script.textContent = 'document.title = "taken over"'
    document.head.append(script)
    return document.title
  })
  expect(ran).not.toBe('taken over')
})

test('a page of another site gets nothing out of the ledger, even in a browser that is let in', async ({
  page,
}) => {
  await page.goto(shop.url)
  await page.route('http://elsewhere.test/', route =>
    route.fulfill({ contentType: 'text/html', body: '<p>elsewhere' }),
  )
  await page.goto('http://elsewhere.test/')
  const outcome = await page.evaluate(async address => {
    const answer = await fetch(address, { credentials: 'include' }).catch(() => 'refused')
    return answer === 'refused' ? answer : 'answered'
  }, `${shop.origin}/api/find`)
  expect(outcome).toBe('refused')
})
