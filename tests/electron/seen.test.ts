import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { en } from '../../core/words/en/index.ts'
import { bracketClock, openTestShop, rosamund, type Shop } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const { contacts: _, ...entry } = rosamund
const recorded = { ...entry, country: '', notes: '' }

describe('a record that two people change', () => {
  it('is not overwritten by who has not seen the change, and each changed value is told on its field', async () => {
    const { id: ownerId } = await shop.act('register.addOwner', rosamund)
    await shop.act('register.changeOwner', {
      ownerId,
      ...recorded,
      name: 'Rosamund Pell-Lind',
      notes: 'Deaf',
    })
    const late = { ownerId, ...recorded, notes: 'Rings twice', seen: recorded }
    const { status, body } = await shop.tryAct('register.changeOwner', late)
    expect(status).toBe(422)
    expect(body.problems.map((one: { code: string; field: string }) => [one.code, one.field])).toEqual([
      ['record.changedMeanwhile', 'name'],
      ['record.changedMeanwhile', 'notes'],
    ])
    expect(body.problems[0].message).toContain('“Rosamund Pell-Lind”')
    expect((await shop.view(`owners/${ownerId}`)).owner.notes).toBe('Deaf')
    const seen = { ...recorded, name: 'Rosamund Pell-Lind', notes: 'Deaf' }
    await shop.act('register.changeOwner', { ...late, seen })
    expect((await shop.view(`owners/${ownerId}`)).owner.notes).toBe('Rings twice')
  })

  it('tells a clock’s coded values in words', async () => {
    const { id: ownerId } = await shop.act('register.addOwner', rosamund)
    const { id: clockId } = await shop.act('register.addClock', { ownerId, ...bracketClock })
    await shop.act('register.changeClock', { clockId, ...bracketClock, dial: 'paper', mains: true })
    const late = { clockId, ...bracketClock, seen: bracketClock }
    const { body } = await shop.tryAct('register.changeClock', late)
    const told = body.problems.map((one: { message: string }) => one.message).join(' ')
    expect(told).toContain(`“${en.dials.paper}”`)
    expect(told).toContain('“ticked”')
  })
})

describe('an owner’s contacts', () => {
  it('have one preferred, which another takes the place of; one struck out cannot', async () => {
    const email = { kind: 'e-mail', value: 'r@pell.example', preferred: false }
    const { id } = await shop.act('register.addOwner', {
      ...rosamund,
      contacts: [...rosamund.contacts, email],
    })
    const ways = async () => (await shop.view(`owners/${id}`)).owner.contacts
    const [phone, mail] = await ways()
    await shop.act('register.preferContact', { contactId: mail.id })
    expect((await ways()).filter((one: { preferred: boolean }) => one.preferred)).toMatchObject([
      { value: 'r@pell.example' },
    ])
    await shop.act('register.strikeContact', { contactId: phone.id, reason: 'Given up' })
    const { body } = await shop.tryAct('register.preferContact', { contactId: phone.id })
    expect(body.problems).toMatchObject([{ code: 'entry.struck', field: 'contactId' }])
  })

  it('keep a telephone that is no number when that is asked for', async () => {
    const kept = { kind: 'phone', value: 'ring 17 at the mill', preferred: true, asWritten: true }
    await shop.act('register.addOwner', { name: 'Odalys Wren', contacts: [kept] })
    const refused = await shop.tryAct('register.addOwner', {
      name: 'Maud Hart',
      contacts: [{ ...kept, value: 'the mill', asWritten: false }],
    })
    expect(refused.body.problems).toMatchObject([{ code: 'input.notAPhone', field: 'contacts[0].value' }])
    const { rows } = await shop.view('owners')
    expect(rows).toMatchObject([{ name: 'Odalys Wren' }])
  })
})
