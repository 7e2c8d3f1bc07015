import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { testSettings } from '../electron/handler-fixture.ts'
import { clearToAxe } from './clear-to-axe.ts'
import { Hands } from './hands.ts'
import { startShop } from './start-shop.ts'
import { daysBefore, openAt } from './work-shop.ts'

const { clock } = en.screens
const { ownerForm } = en.register

test('a computer whose clock ran away is asked about before anything is written, and what is typed stays', async ({
  page,
}) => {
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-clock-'))
  const ledger = join(folder, 'shop.countwheel')
  const { act, leave } = openAt(ledger, daysBefore(20))
  await act('shop.open', { settings: testSettings, person: 'Ines Marrow', firstRepairNumber: 2201 })
  leave()
  const shop = await startShop({ ledger })
  const hands = new Hands(page)
  const asked = page.getByRole('alert', { name: clock.title })
  try {
    await page.goto(shop.url)
    await expect(asked).toBeVisible()
    await clearToAxe(page)
    await page.goto(`${shop.origin}/register/new-owner`)
    await hands.fill(ownerForm.name, 'Odalys Wren')
    await hands.push(ownerForm.enter)
    await expect(
      page
        .getByRole('alert')
        .getByText(/Nothing was written/)
        .first(),
    ).toBeVisible()
    await expect(page.getByLabel(ownerForm.name, { exact: true })).toHaveValue('Odalys Wren')
    await hands.to(asked.getByRole('button').first())
    await hands.press('Enter')
    await expect(asked).toHaveCount(0)
    await expect(page.getByText(clock.confirmed)).toBeVisible()
    await hands.push(ownerForm.enter)
    await expect(page.getByRole('heading', { level: 1, name: 'Odalys Wren' })).toBeVisible()
  } finally {
    await shop.close()
    rmSync(folder, { recursive: true, force: true })
  }
})
