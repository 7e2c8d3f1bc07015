import type { Page } from '@playwright/test'
import { en } from '../../core/words/en/index.ts'
import { elsewhere, expect, test } from './at-the-counter.ts'

const { ownerForm, clockForm, owner: ownerWords, phone, contactForm } = en.register
const { who, toSend } = en.screens
const said = (page: Page) => page.locator('.said')

const field = (page: Page, name: string) => page.locator(`[name="${name}"]`)

const owner = { name: 'Odalys Wren', address: '3 Mill Row', contacts: [], notes: '' }
const clock = { form: 'wall', maker: 'Tarn', trains: 1 }

const seenAgain = (page: Page, now: string) => page.getByText(`“${now}”`).first()

test.describe('two people who save the same', () => {
  test('owner: the second is shown what changed, and nothing is overwritten', async ({
    page,
    hands,
    shop,
  }) => {
    const { id } = await elsewhere(page, 'register/addOwner', owner)
    await page.goto(`${shop.origin}/register/owner/${id}/change`)
    await hands.fill(ownerForm.notes, 'Deaf in the left ear.')
    await elsewhere(page, 'register/changeOwner', {
      ownerId: id,
      name: 'Odalys Wren',
      address: '9 Quay',
      country: '',
      notes: 'Rings twice.',
    })
    await hands.push(ownerForm.change)
    const problems = page.getByRole('alert')
    await expect(problems.getByRole('link')).toHaveCount(2)
    await expect(seenAgain(page, 'Rings twice.')).toBeVisible()
    await expect(field(page, 'address')).toHaveValue('9 Quay')
    await expect(field(page, 'notes')).toHaveValue('Deaf in the left ear.')
    await hands.fill(ownerForm.notes, 'Rings twice. Deaf in the left ear.')
    await hands.push(ownerForm.change)
    const shown = (text: string) => page.locator('.several-lines', { hasText: text })
    await expect(shown('Rings twice. Deaf in the left ear.')).toBeVisible()
    await expect(shown('9 Quay')).toBeVisible()
  })

  test('clock: the second is shown what changed in words, and nothing is overwritten', async ({
    page,
    hands,
    shop,
  }) => {
    const { id: ownerId } = await elsewhere(page, 'register/addOwner', owner)
    const { id } = await elsewhere(page, 'register/addClock', { ownerId, ...clock })
    await page.goto(`${shop.origin}/register/clock/${id}/change`)
    await hands.fill(en.counter.takeIn.serial, 'T-9')
    await elsewhere(page, 'register/changeClock', { clockId: id, ...clock, dial: 'silvered' })
    await hands.push(clockForm.change)
    await expect(seenAgain(page, en.dials.silvered)).toBeVisible()
    await expect(field(page, 'dial')).toHaveValue('silvered')
    await hands.push(clockForm.change)
    await expect(said(page)).toContainText(clockForm.changed)
    await expect(page.getByText('T-9').first()).toBeVisible()
    await expect(page.getByText(en.dials.silvered).first()).toBeVisible()
  })
})

test('a telephone is read while it is typed; what is no number is kept as written when that is asked for', async ({
  page,
  hands,
  shop,
}) => {
  const { id } = await elsewhere(page, 'register/addOwner', owner)
  await page.goto(`${shop.origin}/register/owner/${id}/contact`)
  const number = page.getByLabel(contactForm.value.phone)
  await hands.fill(contactForm.value.phone, '020 7946 0018')
  await hands.press('Tab')
  await expect(page.getByText(/Read as \+44 20 7946 0018\.$/)).toBeVisible()
  await hands.fill(contactForm.value.phone, '01632 960 114')
  await hands.press('Tab')
  await expect(page.getByText(/look at it once more/)).toBeVisible()
  await hands.fill(contactForm.value.phone, 'ask at the baker’s')
  await hands.press('Control+Enter')
  await expect(page.getByRole('alert')).toBeFocused()
  await expect(number).toHaveValue('ask at the baker’s')
  await hands.to(page.getByRole('checkbox', { name: phone.asWritten }))
  await hands.press('Space')
  await hands.press('Control+Enter')
  await expect(page.getByText('ask at the baker’s', { exact: true })).toBeVisible()
})

test('another contact is marked as the preferred one, and what was said goes when the page is turned', async ({
  page,
  hands,
  shop,
}) => {
  const contacts = [
    { kind: 'phone', value: '020 7946 0018', preferred: true },
    { kind: 'e-mail', value: 'odalys@wren.example', preferred: false },
  ]
  const { id } = await elsewhere(page, 'register/addOwner', { ...owner, contacts })
  await page.goto(`${shop.origin}/register/owner/${id}`)
  await hands.push(ownerWords.preferOf('odalys@wren.example'))
  await expect(said(page)).toContainText(ownerWords.nowPreferred('odalys@wren.example'))
  await expect(page.getByRole('button', { name: ownerWords.preferOf('+44 20 7946 0018') })).toBeVisible()
  await hands.press('Alt+1')
  await expect(page.getByRole('heading', { level: 1, name: en.screens.pages.counter })).toBeVisible()
  await expect(said(page)).toHaveText('')
  await page.goBack()
  await expect(page.getByRole('heading', { level: 1, name: 'Odalys Wren' })).toBeVisible()
  await expect(said(page)).toHaveText('')
})

test('a window asks once who is at the counter, before its first act, and proposes nobody', async ({
  browser,
  shop,
}) => {
  const page = await (await browser.newContext()).newPage()
  await page.goto(shop.url)
  await expect(page.getByLabel(who.label)).toHaveValue('')
  const { id } = await elsewhere(page, 'register/addOwner', owner)
  await page.goto(`${shop.origin}/register/owner/${id}/change`)
  await field(page, 'notes').fill('Rings twice.')
  await page.keyboard.press('Control+Enter')
  const asked = page.getByRole('dialog', { name: who.ask })
  await expect(asked.getByRole('button', { name: 'Ines Marrow' })).toBeFocused()
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await expect(said(page)).toContainText(ownerForm.changed('Odalys Wren'))
  await expect(page.getByLabel(who.label).locator('option:checked')).toHaveText('Tobias Vane')
  await page.reload()
  await expect(page.getByLabel(who.label).locator('option:checked')).toHaveText('Tobias Vane')
  await page.context().close()
})

test('an estimate that is written and not sent stands apart, and does not await the owner’s word', async ({
  page,
  hands,
  shop,
}) => {
  const { number, id } = await elsewhere(page, 'counter/takeIn', { owner, clock, fault: 'Stops.' })
  const lines = [{ kind: 'labour', description: 'Service', quantity: '2', unit: '48.00' }]
  const awaiting = page.locator('.sums').getByText(en.counter.sums.awaitingWord)
  await page.goto(`${shop.origin}/counter`)
  const before = await awaiting.locator('..').textContent()
  await elsewhere(page, 'estimates/write', { repairId: id, lines })
  await page.reload()
  await expect(page.getByRole('row', { name: new RegExp(`${number}.*${toSend}`) })).toBeVisible()
  await expect(awaiting.locator('..')).toHaveText(before ?? '')
  await page.goto(`${shop.origin}/counter/${number}`)
  await expect(page.getByText(toSend).first()).toBeVisible()
  await hands.follow(en.screens.acts['send-estimate'])
  await hands.press('Control+Enter')
  await hands.agree(en.repair.sendForm.send)
  await expect(page.getByText(en.screens.stages['estimate-out'], { exact: true }).first()).toBeVisible()
})
