import { expect, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { picture } from '../pictures/pictures.ts'
import { Hands } from './hands.ts'
import { type StartedShop, startShop } from './start-shop.ts'

const { bench, condition } = en
const { service } = bench
let shop: StartedShop
test.beforeAll(async () => {
  shop = await startShop({ demo: true })
})
test.afterAll(() => shop.close())

test('the movement as it was found, in words and photographs, stands again beside the steps of its assembly', async ({
  page,
}) => {
  const hands = new Hands(page)
  const mark = 'Tail points at the fourth tooth of the rack'
  const shows = 'Gathering pallet at rest'
  const step = (words: string) => page.locator('.steps > li', { hasText: words })
  const photographs = (of: ReturnType<typeof step>) =>
    of.getByRole('listitem').filter({ has: page.locator('img') })
  await page.goto(shop.url)
  await page.goto(`${shop.origin}/bench/2215`)
  await expect(page.getByText(service.none)).toBeVisible()

  await test.step('a mark is written down before the strip', async () => {
    await hands.push(service.addMark)
    await hands.choose(service.mark, en.asFoundMarks['gathering-pallet'])
    await hands.fill(service.text, mark)
    await hands.push(service.send)
    await expect(page.getByText(service.said)).toBeVisible()
    await expect(page.getByText(service.none)).toBeHidden()
  })

  await test.step('it is photographed, with what the photograph shows', async () => {
    await hands.push(service.addPhotographs)
    await hands.fill(service.shows, shows)
    const field = page.getByLabel(condition.chooseFor(service.asFound), { exact: true })
    await hands.to(field)
    // The window in which a file is chosen belongs to the system.
    await field.setInputFiles({
      name: 'pallet.jpg',
      mimeType: 'image/jpeg',
      buffer: picture('quadrants.jpg'),
    })
    await expect(page.getByText(condition.attached)).toBeVisible()
  })

  await test.step('both stand beside the assembly, the mark where strike is set as well, neither at the cleaning', async () => {
    await hands.to(page.locator('summary', { hasText: service.steps }))
    await hands.press('Enter')
    await expect(step(bench.steps.assemble)).toContainText(mark)
    await expect(photographs(step(bench.steps.assemble))).toHaveCount(1)
    await expect(step(bench.steps.assemble)).toContainText(shows)
    const thumbnail = await photographs(step(bench.steps.assemble)).getByRole('button').boundingBox()
    expect(thumbnail?.width).toBeLessThan(160)
    await expect(step(bench.steps.sound)).toContainText(mark)
    await expect(step(bench.steps.clean)).not.toContainText(mark)
    await expect(photographs(step(bench.steps.clean))).toHaveCount(0)
  })

  await test.step('a mark struck out stays legible where it was written, and misleads nobody at the assembly', async () => {
    await hands.push(bench.strike.of(en.asFoundMarks['gathering-pallet']))
    await hands.fill(bench.strike.reason, 'Seen from behind')
    await hands.push(bench.strike.act)
    await expect(page.locator('s', { hasText: mark })).toBeVisible()
    await expect(page.getByText(en.screens.struck('Seen from behind'))).toBeVisible()
    await expect(step(bench.steps.assemble)).not.toContainText(mark)
  })
})
