import type { Page } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { picture } from '../pictures/pictures.ts'
import { expect, test } from './at-the-counter.ts'

const { condition: say, counter } = en

/** Drops a file that says it is `bytes` long, all of them nothing. */
const dropEmpty = (page: Page, name: string, bytes: number) =>
  page
    .locator('.photograph-field')
    .first()
    .evaluate(
      (field, [called, length]) => {
        const given = new DataTransfer()
        given.items.add(new File([new Uint8Array(length)], called, { type: 'image/jpeg' }))
        field.dispatchEvent(new DragEvent('drop', { dataTransfer: given, bubbles: true, cancelable: true }))
      },
      [name, bytes] as const,
    )

/** A whole picture whose head says that it is 60,000 points wide and high, as one made to burst does. */
function bomb(): Buffer {
  const bytes = Buffer.from(picture('quadrants.jpg'))
  const frame = bytes.indexOf(Buffer.from([0xff, 0xc0]))
  bytes.writeUInt16BE(60_000, frame + 5)
  bytes.writeUInt16BE(60_000, frame + 7)
  return bytes
}

test('photographs that are none, vast, made to burst or of a hostile name are refused with a reason; one by the camera is kept', async ({
  page,
  hands,
}) => {
  const refused = page.getByRole('alert').getByRole('listitem')
  await hands.fill(counter.line.name, 'Ottoline Fenn')
  await hands.press('Enter')
  await hands.fill(counter.takeIn.faultAsTold, 'Fell off the wall.')
  await hands.to(page.locator('summary', { hasText: say.fold }))
  await hands.press('Enter')
  const hostile = '<img src=x onerror=document.title=1>.jpg'
  await page
    .getByLabel(/^Choose files/)
    .first()
    .setInputFiles([
      { name: hostile, mimeType: 'image/jpeg', buffer: Buffer.from('<script>alert(1)</script>') },
      { name: 'burst.jpg', mimeType: 'image/jpeg', buffer: bomb() },
    ])
  await expect(refused).toHaveCount(2)
  await expect(refused.first()).toContainText(hostile)
  await expect(refused.last()).toContainText(/^burst\.jpg: /)
  await expect(page).not.toHaveTitle('1')
  await dropEmpty(page, 'weighs.jpg', 200 * 1024 * 1024)
  await expect(refused).toHaveText([/^weighs\.jpg: .*60/])
  await expect(page.locator('.thumbnail')).toHaveCount(0)
  const camera = page.getByLabel(/^Take a photograph/).first()
  await expect(camera).toHaveAttribute('capture', 'environment')
  await camera.setInputFiles({
    name: 'one.jpg',
    mimeType: 'image/jpeg',
    buffer: picture('quadrants.jpg'),
  })
  await expect(page.locator('.thumbnail')).toHaveCount(1)
  await hands.press('Control+Enter')
  await expect(page.getByRole('heading', { level: 1, name: /mantel clock/ })).toBeVisible()
  await expect(page.locator('.thumbnail')).toHaveCount(1)
})
