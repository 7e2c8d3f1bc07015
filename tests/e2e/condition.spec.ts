import { type Browser, expect, type Page, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { picture, withExif } from '../pictures/pictures.ts'
import { clearToAxe } from './clear-to-axe.ts'
import { Hands } from './hands.ts'
import { onBothHosts } from './on-both-hosts.ts'
import { type StartedShop, startShop } from './start-shop.ts'
import { visitedClock } from './visited-clock.ts'

const { condition: say, counter } = en

const board = (page: Page) => page.getByRole('application')
const notes = (page: Page) => page.getByRole('list', { name: say.notes }).locator('> li')

/** The page of taking in, its fold of drawing and photographs open. */
async function takeInOpened(hands: Hands): Promise<void> {
  const { page } = hands
  await hands.fill(counter.line.name, 'Ottoline Fenn')
  await hands.press('Enter')
  await expect(page.getByRole('heading', { level: 1, name: counter.takeIn.title })).toBeVisible()
  await hands.choose(counter.takeIn.form, en.forms.cuckoo)
  await hands.fill(counter.takeIn.faultAsTold, 'Fell off the wall.')
  await hands.to(page.locator('summary', { hasText: say.fold }))
  await hands.press('Enter')
  await expect(board(page)).toBeVisible()
}

async function setTwoPins(hands: Hands): Promise<void> {
  const { page } = hands
  await hands.to(board(page))
  for (const key of ['Shift+ArrowLeft', 'Shift+ArrowUp', 'ArrowUp', 'Enter']) await hands.press(key)
  await expect(page.getByText(say.pinAt('Front', 40, 38))).toBeVisible()
  await hands.press('Shift+ArrowRight')
  await hands.press('Enter')
  await expect(page.getByText(say.pinAt('Front', 50, 38))).toBeVisible()
  await hands.press('Delete')
  await expect(page.getByText(say.pinAt('Front', 50, 38))).toHaveCount(0)
  await page.keyboard.press('Shift+Tab')
  await page.keyboard.type(say.newNote)
  await hands.to(page.getByRole('radio', { name: 'Front (1)' }))
  for (const key of ['ArrowDown', 'ArrowDown']) await hands.press(key)
  await expect(board(page)).toHaveAccessibleName(say.board(en.forms.cuckoo, 'Dial'))
  await hands.to(board(page))
  await hands.press('Enter')
}

/** Colours of the four quarters of a kept photograph in reading order, its size, and whether anything of the camera's notes is in it. */
const lookAt = (page: Page) =>
  page
    .locator('.thumbnail img')
    .first()
    .evaluate(async element => {
      const answer = await fetch((element as HTMLImageElement).src)
      const blob = await answer.blob()
      const bitmap = await createImageBitmap(blob)
      const { width, height } = bitmap
      const pen = new OffscreenCanvas(width, height).getContext('2d')
      pen?.drawImage(bitmap, 0, 0)
      const colour = (x: number, y: number) => {
        const [r = 0, g = 0, b = 0] = pen?.getImageData(width * x, height * y, 1, 1).data ?? []
        return `${r > 127 ? 'r' : ''}${g > 127 ? 'g' : ''}${b > 127 ? 'b' : ''}`
      }
      const text = new TextDecoder('latin1').decode(await blob.arrayBuffer())
      return {
        type: blob.type,
        size: [width, height],
        colours: [colour(0.25, 0.25), colour(0.75, 0.25), colour(0.25, 0.75), colour(0.75, 0.75)],
        notes: /Exif|GPS/.test(text),
      }
    })

onBothHosts(
  'two pins and a photograph are put on the clock that is taken in, by keyboard, and stand on its repair',
  async ({ page }) => {
    const hands = new Hands(page)
    await takeInOpened(hands)
    await setTwoPins(hands)
    await page
      .getByLabel(/^Choose files: case/)
      .setInputFiles({ name: 'p.jpg', mimeType: 'image/jpeg', buffer: withExif(picture('quadrants.jpg'), 6) })
    await expect(page.getByText(say.kept(1))).toBeVisible()
    await hands.press('Control+Enter')
    await expect(page.getByRole('heading', { level: 1, name: /cuckoo clock/ })).toBeVisible()
    await expect(notes(page)).toHaveText([
      /^1 case, marked.*Pinned on: Front/,
      /^2 dial, marked.*Pinned on: Dial/,
    ])
    const drawing = page.getByRole('img', { name: say.drawing(en.forms.cuckoo, 'Front', 1) })
    await expect(drawing).toBeVisible()
    expect(await lookAt(page)).toEqual({
      type: 'image/jpeg',
      // Orientation 6 lies on its side: upright, what was lower left is upper left (Exif 3.0, tag 0112).
      size: [48, 64],
      colours: ['b', 'r', 'rgb', 'g'],
      notes: false,
    })
  },
  { demo: true },
)

test.describe('with a clock that comes again', () => {
  let visited: Awaited<ReturnType<typeof visitedClock>>
  let shop: StartedShop
  test.beforeAll(async () => {
    visited = await visitedClock()
    shop = await startShop({ ledger: visited.file })
  })
  test.afterAll(async () => {
    await shop.close()
    visited.remove()
  })

  let state: Awaited<ReturnType<Awaited<ReturnType<Browser['newContext']>>['storageState']>> | undefined
  const opened = async (browser: Browser, path: string, colorScheme: 'light' | 'dark' = 'light') => {
    const context = await browser.newContext({ colorScheme, ...(state && { storageState: state }) })
    const page = await context.newPage()
    if (!state) await page.goto(shop.url)
    state ??= await context.storageState()
    await page.goto(shop.origin + path)
    await page.getByRole('heading', { level: 1 }).waitFor()
    return page
  }

  test('its report is laid beside the last visit’s, and each note says how it stands to it', async ({
    browser,
  }) => {
    const page = await opened(browser, '/counter/2202')
    const hands = new Hands(page)
    await hands.push(/^Compare with the last visit: 2201/)
    await expect(page.getByRole('img', { name: /front: outline drawing with/ })).toHaveCount(2)
    await expect(notes(page)).toHaveText([
      /Leaf chipped.*As it was then/,
      /^2 dial, damaged.*Noted otherwise then/,
      /^3 weights, missing.*New since then/,
      /^1 case/,
      /^2 dial, worn/,
    ])
    await page.context().close()
  })

  test('a photograph is dropped or pasted; what is none is refused with its reason and nothing is lost', async ({
    browser,
  }) => {
    const page = await opened(browser, '/counter/2202')
    const hands = new Hands(page)
    await hands.to(page.locator('summary', { hasText: say.add }))
    await hands.press('Enter')
    const files = page.getByLabel(say.chooseFor(say.wholeClock))
    await files.setInputFiles([
      { name: 'receipt.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('only text') },
      { name: 'half.jpg', mimeType: 'image/jpeg', buffer: picture('quadrants.jpg').subarray(0, 300) },
    ])
    await expect(page.getByRole('alert').getByRole('listitem')).toHaveText([
      /^receipt\.jpg: Only JPEG/,
      /^half\.jpg: This photograph is damaged/,
    ])
    const before = await page.locator('.thumbnail').count()
    await page.locator('.photograph-field').evaluate(async field => {
      const canvas = new OffscreenCanvas(3000, 2000)
      canvas.getContext('2d')?.fillRect(0, 0, 1500, 2000)
      const given = new DataTransfer()
      given.items.add(new File([await canvas.convertToBlob()], 'large.png', { type: 'image/png' }))
      field.dispatchEvent(new DragEvent('drop', { dataTransfer: given, bubbles: true, cancelable: true }))
    })
    await expect(page.locator('.thumbnail')).toHaveCount(before + 1)
    const size = () =>
      page
        .locator('.thumbnail img')
        .last()
        .evaluate((one: HTMLImageElement) => [one.naturalWidth, one.naturalHeight])
    await expect.poll(size).toEqual([2400, 1600])
    await page.locator('.photograph-field').evaluate(async field => {
      const canvas = new OffscreenCanvas(40, 30)
      canvas.getContext('2d')?.fillRect(0, 0, 9, 9)
      const given = new DataTransfer()
      given.items.add(new File([await canvas.convertToBlob()], 'pasted.png', { type: 'image/png' }))
      field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: given, bubbles: true }))
    })
    await expect(page.locator('.thumbnail')).toHaveCount(before + 2)
    await page.context().close()
  })

  for (const light of ['light', 'dark'] as const)
    test(`is clear to axe in the ${light} theme, on its repair and while one is taken in`, async ({
      browser,
    }) => {
      const repair = await opened(browser, '/counter/2202', light)
      await new Hands(repair).push(/^Compare with the last visit/)
      await repair.locator('summary', { hasText: say.add }).click()
      await clearToAxe(repair)
      await repair.context().close()
      const taking = await opened(browser, '/counter', light)
      const hands = new Hands(taking)
      await takeInOpened(hands)
      await board(taking).click({ position: { x: 100, y: 100 } })
      await clearToAxe(taking)
      await taking.context().close()
    })

  test('a pin is at least 24 pixels to hit, on a narrow screen too (WCAG 2.5.8)', async ({ browser }) => {
    const page = await opened(browser, '/counter/2202')
    for (const width of [1280, 320]) {
      await page.setViewportSize({ width, height: 800 })
      const box = await page.locator('.pin circle').first().boundingBox()
      expect(box?.width).toBeGreaterThanOrEqual(24)
    }
    await page.context().close()
  })
})
