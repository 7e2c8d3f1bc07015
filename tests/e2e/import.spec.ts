import { type BrowserContext, expect, type Page, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { clearToAxe } from './clear-to-axe.ts'
import { Hands } from './hands.ts'
import { type StartedShop, startShop } from './start-shop.ts'

const { listImport: say, screens } = en

// The printed address is good for one browser: both tests go on in the one that used it.
let shop: StartedShop
let context: BrowserContext
test.beforeAll(async ({ browser }) => {
  shop = await startShop({ demo: true })
  context = await browser.newContext()
  await (await context.newPage()).goto(shop.url)
})
test.afterAll(async () => {
  await context.close()
  await shop.close()
})

/** A list as a spreadsheet of Western Europe writes it: semicolons, Windows-1252, a line break inside quotes. */
const list = Buffer.from(
  [
    'Name;Phone;Address;Clock type;Maker;Serial no.;Shelf',
    'Zoë Ångström;01632 961 901;"4 Weir Lane',
    'Orrinford";mantel;Corrie & Vell;CV 7001;a',
    'Zoë Ångström;01632 961 901;;carriage;Ollerenshaw;OL 9;b',
    'R. Pell;01632 960 218;11 Quay Street;wall;Ashby;A 77;c',
    'Maud Hart;not a number;;;;;d',
    ';01632 961 903;;;;;e',
    'Theo Vance;01632 961 904;;sundial;;;f',
  ].join('\r\n'),
  'latin1',
)

const choose = (page: Page, buffer: Buffer, name = 'owners.csv') =>
  page.getByLabel(say.choose).setInputFiles({ name, mimeType: 'text/csv', buffer })

const bad = (page: Page) => page.getByRole('table', { name: say.bad })

test('a list is entered by keyboard: columns, every bad line, likely duplicates, all or none, and nothing twice', async () => {
  const page = await context.newPage()
  const hands = new Hands(page)

  await test.step('the file is read, its columns guessed, its first lines shown', async () => {
    await page.goto(`${shop.origin}/register`)
    await hands.follow(say.link)
    await expect(page.getByRole('heading', { level: 1, name: say.title })).toBeVisible()
    await choose(page, list)
    await expect(page.getByText(say.notUtf8)).toBeVisible()
    await expect(page.getByText(say.found(6))).toBeVisible()
    await expect(page.getByLabel(say.delimiter)).toHaveValue(';')
    await expect(page.getByLabel(say.meansOf('Serial no.'))).toHaveValue('serial')
    await expect(page.getByLabel(say.meansOf('Shelf'))).toHaveValue('')
    await expect(page.getByText('4 Weir Lane, Orrinford · 01632 961 901')).toBeVisible()
    await clearToAxe(page)
  })

  await test.step('every line is checked, and each bad one told with its line, field and reason', async () => {
    await hands.push(say.check)
    await expect(bad(page).locator('tbody tr')).toHaveText([
      new RegExp(`^6.*${say.fields.phone}`),
      new RegExp(`^7.*${say.fields.name}`),
      /^8.*“sundial”/,
    ])
    await expect(page.getByLabel(say.takeAsOf(5))).toHaveText(new RegExp(say.samePerson('Rosamund Pell')))
    await clearToAxe(page)
    await expect(page.getByRole('button', { name: say.enter(3) })).toHaveCount(0)
  })

  await test.step('with the bad lines left out, the others are entered', async () => {
    await hands.to(page.getByLabel(say.leaveOut(3)))
    await hands.press('Space')
    await hands.push(say.enter(3))
    await hands.agree(say.enter(3))
    await expect(page.getByText(say.said(1, 3))).toBeVisible()
    await expect(page.getByRole('heading', { level: 1, name: screens.pages.register })).toBeVisible()
  })

  await test.step('the same file again has nothing new', async () => {
    await page.goto(`${shop.origin}/register/import`)
    await choose(page, list)
    await hands.push(say.check)
    await expect(page.getByText(say.sums(0, 3))).toBeVisible()
  })
})

test('a list in UTF-8 with a byte order mark is read as the one in Windows-1252, and a telephone that is no number may be kept', async () => {
  const page = await context.newPage()
  const hands = new Hands(page)
  const marked = [
    '\uFEFFName;Phone;Address;Clock type;Maker;Serial no.',
    'Łucja Żak;by way of the baker;"2 Weir Lane',
    'Orrinford";mantel;"Corrie; Vell";CV 8001',
    'Łucja Żak;by way of the baker;;wall;Ashby;CV 8002',
  ].join('\n')
  await page.goto(`${shop.origin}/register/import`)
  await choose(page, Buffer.from(marked, 'utf8'))
  await expect(page.getByText(say.found(2))).toBeVisible()
  await expect(page.getByLabel(say.encoding)).toHaveValue('utf-8')
  await expect(page.getByText('2 Weir Lane, Orrinford · by way of the baker')).toBeVisible()
  await hands.push(say.check)
  await expect(bad(page).locator('tbody tr')).toHaveCount(2)
  await hands.to(page.getByLabel(say.phonesAsWritten))
  await hands.press('Space')
  await hands.push(say.check)
  await hands.push(say.enter(2))
  await hands.agree(say.enter(2))
  await expect(page.getByText(say.said(1, 2))).toBeVisible()
  await page.goto(`${shop.origin}/register?afterName=%C5%81ucja&afterId=0`)
  await hands.to(page.getByRole('row', { name: /Łucja Żak/ }).getByRole('link'))
  await hands.press('Enter')
  await expect(page.getByText('by way of the baker', { exact: true })).toBeVisible()
  await expect(page.getByText('Corrie; Vell').first()).toBeVisible()
})

test('a long list shows how far its check is and can be stopped, and a broken one is told', async () => {
  const page = await context.newPage()
  const hands = new Hands(page)
  await page.goto(`${shop.origin}/register/import`)
  const lines = Array.from({ length: 10_000 }, (_, i) => `Owner ${i},+44 1632 ${String(100_000 + i)},S ${i}`)
  await choose(page, Buffer.from(`\uFEFFName,Phone,Serial\n${lines.join('\n')}\n`))
  await expect(page.getByText(say.found(10_000))).toBeVisible()
  await hands.push(say.check)
  await expect(page.getByRole('progressbar')).toBeVisible()
  await hands.push(say.stop)
  await expect(page.getByText(say.stopped)).toBeVisible()
  await choose(page, Buffer.from('Name,Phone\n"Maud,01632 960901\n'), 'broken.csv')
  await expect(page.getByText(/cannot be read/)).toBeVisible()
})
