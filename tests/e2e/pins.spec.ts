import { type Form, forms } from '../../core/vocabulary/clock.ts'
import { views } from '../../core/vocabulary/intake.ts'
import { en } from '../../core/words/en/index.ts'
import { expect, test } from './at-the-counter.ts'
import { Hands } from './hands.ts'

const { condition: say, counter } = en

test.use({ hasTouch: true })

test('a pin is set on every view of every form of clock, by touch, by mouse and by keyboard', async ({
  page,
  hands,
  shop,
}) => {
  test.slow() // every form is taken in hand
  for (const [index, form] of (Object.keys(forms) as Form[]).entries()) {
    await page.goto(`${shop.origin}/counter/take-in?owner=Owner%20${index}`)
    await hands.choose(counter.takeIn.form, en.forms[form])
    await page.locator('summary', { hasText: say.fold }).click()
    for (const [turn, view] of views.entries()) {
      await page.getByRole('radio', { name: say.views[view], exact: true }).check()
      const board = page.getByRole('application', { name: say.board(en.forms[form], say.views[view]) })
      const place = { x: 60, y: 60 }
      if (turn % 3 === 0) await board.tap({ position: place })
      else if (turn % 3 === 1) await board.click({ position: place })
      else {
        await board.focus()
        await new Hands(page).press('Enter')
      }
      await expect(page.getByRole('radio', { name: say.viewWithPins(say.views[view], 1) })).toBeVisible()
    }
  }
})
