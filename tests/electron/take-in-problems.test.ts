import { afterEach, beforeEach, expect, it } from 'vitest'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'
import { refused } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const contacts = [
  { kind: 'phone', value: '12', preferred: true },
  { kind: 'e-mail', value: 'nobody', preferred: false },
]

it('what is missing, what cannot be read and what the book has against a taking in are told all at once', async () => {
  await takeInPell(shop)
  const said = {
    owner: { name: '', contacts },
    clock: { form: 'mantel', trains: 9, serial: 'OL-2214' },
    fault: ' ',
    fee: 'ten',
    low: '50',
    high: '20',
  }
  const { status, problems } = refused(await shop.tryAct('counter.takeIn', said))
  expect(status).toBe(422)
  expect(problems).toEqual(
    expect.arrayContaining([
      'input.required owner.name',
      'input.required fault',
      'input.notADecimal fee',
      'input.notAPhone owner.contacts[0].value',
      'input.notAnEmail owner.contacts[1].value',
      'clock.likely clock.serial',
      'estimate.highBelowLow high',
    ]),
  )
})

it('what the book alone refuses of owner, clock and cost is told all at once, and nothing is entered', async () => {
  const { ownerId, clockId } = await takeInPell(shop)
  const said = {
    owner: { name: 'Tobias Okafor-Lind', contacts },
    clock: { id: clockId },
    fault: 'Stops.',
    low: '50',
    high: '20',
  }
  expect(refused(await shop.tryAct('counter.takeIn', said)).problems).toEqual([
    'input.notAPhone owner.contacts[0].value',
    'input.notAnEmail owner.contacts[1].value',
    'clock.otherOwner clock.id',
    'estimate.highBelowLow high',
  ])
  expect((await shop.view('owners')).rows.map((row: { id: number }) => row.id)).toEqual([ownerId])
})
