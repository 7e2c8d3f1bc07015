import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { dayBook } from '../../db/schema/index.ts'
import { openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const tried = (act: string, input: unknown) =>
  shop.ask(`/api/${act.replace('.', '/')}`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', 'Countwheel-Trial': '1' },
    body: JSON.stringify(input),
  })

/** Everything in the day book. */
const rows = () => shop.ledger.read.select().from(dayBook).all()

describe('an act on trial', () => {
  it('answers what the act would answer, with the number it would take, and keeps nothing of it', async () => {
    const repair = await takeInPell(shop)
    const before = rows()
    const deposit = { repairId: repair.id, amount: '50.00', method: 'cash' }
    const trial = await tried('accounts.pay', deposit)
    expect(trial).toMatchObject({ status: 200, body: { number: 'R0001' } })
    expect(rows()).toEqual(before)
    expect(await shop.act('accounts.pay', deposit)).toEqual(trial.body)
  })

  it('is refused for what the act would be refused for', async () => {
    const repair = await takeInPell(shop)
    const nothing = { repairId: repair.id, amount: '0', method: 'cash' }
    const { status, body } = await tried('accounts.pay', nothing)
    expect(status).toBe(422)
    expect(body).toEqual((await shop.tryAct('accounts.pay', nothing)).body)
  })
})
