import { en } from '../../core/words/en/index.ts'
import { elsewhere, expect, test } from './at-the-counter.ts'
import { clearToAxe } from './clear-to-axe.ts'

const { takeIn } = en.counter
const { comebackCover, clock } = en.register
const { coverForm, comebackNotCovered } = en.repair
const { spring, accident } = { spring: en.exclusions.mainsprings, accident: en.exclusions.accident }

// Repair 2202 of the demonstration is an overhauled longcase clock, ready and paid.
test('a comeback is taken in on the warranty found, its exclusions looked through, and decided again at the strip, by keyboard', async ({
  page,
  hands,
  shop,
}) => {
  const { belongings, repair } = await page.evaluate(async () =>
    (await fetch('/api/pages/repairs/2202')).json(),
  )
  await elsewhere(page, 'counter/handOver', {
    repairId: repair.id,
    toName: 'Tendai Okafor-Lind',
    belongings: belongings
      .filter(({ custody }: { custody: string }) => custody === 'received')
      .map(({ id }: { id: number }) => ({ id, returned: true })),
  })

  await test.step('one find leads to the clock, its warranty, and the comeback', async () => {
    await hands.press('/')
    await hands.write('Okafor')
    await hands.take(/^2202.*collected$/)
    await expect(page.getByText(clock.covered(2202))).toBeVisible()
    await hands.follow(clock.comebackOf(2202))
    await expect(page.getByRole('checkbox', { name: takeIn.comeback(2202) })).toBeChecked()
    await expect(page.getByRole('checkbox', { name: comebackCover.covered(2202) })).toBeChecked()
  })

  await test.step('a cause that the warranty leaves out takes the cover away, with the reason', async () => {
    await hands.to(page.locator('summary', { hasText: comebackCover.causes }))
    await hands.press('Enter')
    await hands.to(page.getByRole('checkbox', { name: accident }))
    await hands.press('Space')
    await expect(page.getByText(comebackCover.notCovered(2202))).toBeVisible()
    await expect(page.getByRole('list', { name: clock.why })).toContainText(accident)
    await clearToAxe(page)
    await hands.press('Space')
    await expect(page.getByRole('checkbox', { name: comebackCover.covered(2202) })).toBeChecked()
    await hands.fill(takeIn.faultAsTold, 'Stopped again on Tuesday.')
    await hands.press('Control+Enter')
    await expect(page.getByRole('heading', { level: 1, name: /longcase clock/ })).toBeVisible()
    await expect(page.getByText(en.repair.comebackCovered)).toBeVisible()
  })

  await test.step('at the strip it turns out to be left out, and waits for an estimate', async () => {
    await hands.to(page.locator('summary', { hasText: en.repair.otherActs }))
    await hands.press('Enter')
    await hands.follow(coverForm.act)
    await hands.to(page.locator('summary', { hasText: comebackCover.causes }))
    await hands.press('Enter')
    await hands.to(page.getByRole('checkbox', { name: spring }))
    await hands.press('Space')
    await clearToAxe(page)
    await hands.press('Control+Enter')
    await hands.agree(coverForm.send)
    await expect(page.getByText(comebackNotCovered(spring))).toBeVisible()
    await expect(page.locator('.standing-bar')).toContainText(en.screens.stages['taken-in'])
  })

  await test.step('it stands first on the counter, not covered', async () => {
    await page.goto(`${shop.origin}/counter`)
    await expect(page.getByRole('row', { name: /Okafor-Lind.*came back, not covered/ })).toBeVisible()
  })
})
