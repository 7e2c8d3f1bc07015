import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { bracketClock, openTestShop, rosamund, type Shop, takeInPell } from './handler-fixture.ts'
import { refused } from './work-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const like = async (kind: 'owners' | 'clocks', typed: Record<string, string>) =>
  (await shop.ask(`/api/find/${kind}?${new URLSearchParams(typed)}`)).body.likely

const typed = (name: string, phone = '', email = '') => ({ name, phone, email })
const mantel = { form: 'mantel', trains: 2, power: 'spring', duration: '8-day' }
const takeIn = (owner: unknown, clock: unknown) =>
  shop.tryAct('counter.takeIn', { owner, clock, fault: 'Stops.' })

describe('an owner who may be on record', () => {
  it('is refused until it was said that it is someone else, at the counter and on the register, and nothing is entered', async () => {
    const { ownerId } = await takeInPell(shop)
    const again = { name: 'PELL,  Rosamund' }
    expect(refused(await takeIn(again, mantel))).toEqual({
      status: 422,
      problems: ['owner.likely owner.name'],
    })
    expect(refused(await shop.tryAct('register.addOwner', again))).toEqual({
      status: 422,
      problems: ['owner.likely name'],
    })
    expect((await shop.view('owners')).rows).toHaveLength(1)
    expect((await takeIn({ ...again, otherThan: [ownerId] }, mantel)).status).toBe(200)
    expect((await shop.view('owners')).rows).toHaveLength(2)
  })

  it('is asked after once more when another of the name was entered meanwhile', async () => {
    const first = await shop.act('register.addOwner', rosamund)
    const second = await shop.act('register.addOwner', { name: 'Rosamund Pell', otherThan: [first.id] })
    const third = { name: 'Rosamund Pell', otherThan: [first.id] }
    expect(refused(await shop.tryAct('register.addOwner', third)).problems).toEqual(['owner.likely name'])
    const both = { ...third, otherThan: [first.id, second.id] }
    expect((await shop.tryAct('register.addOwner', both)).status).toBe(200)
  })

  it('is shown while the name, a telephone or an e-mail is typed, with what tells who it is', async () => {
    const contacts = [...rosamund.contacts, { kind: 'e-mail', value: 'Pell@Example.org', preferred: false }]
    const { id } = await shop.act('register.addOwner', { ...rosamund, contacts })
    const shown = {
      id,
      name: 'Rosamund Pell',
      address: rosamund.address,
      contacts: ['+44 20 7946 0018', 'pell@example.org'],
    }
    expect(await like('owners', typed('rosamund pell'))).toEqual([{ ...shown, why: 'name' }])
    expect(await like('owners', typed('R. P.', '(020) 7946-0018'))).toEqual([{ ...shown, why: 'contact' }])
    expect(await like('owners', typed('', '', 'PELL@example.org'))).toEqual([{ ...shown, why: 'contact' }])
    expect(await like('owners', typed('Rosamund'))).toEqual([])
  })

  it('is not one who was merged away, nor told by a contact that was struck out', async () => {
    const { id } = await shop.act('register.addOwner', rosamund)
    const twin = await shop.act('register.addOwner', { name: 'Rosa Pell' })
    await shop.act('register.mergeOwners', { ownerId: twin.id, intoId: id })
    const { owner } = await shop.view(`owners/${id}`)
    await shop.act('register.strikeContact', { contactId: owner.contacts[0].id, reason: 'Given up' })
    expect(await like('owners', typed('Rosa Pell', '020 7946 0018'))).toEqual([])
  })
})

describe('a clock that may be on record', () => {
  it('is refused by its serial number until it was said to be another', async () => {
    const { clockId, ownerId } = await takeInPell(shop)
    const again = { ...bracketClock, maker: '', serial: 'ol 2214' }
    expect(refused(await takeIn({ name: 'T. Okafor' }, again))).toEqual({
      status: 422,
      problems: ['clock.likely clock.serial'],
    })
    expect(refused(await shop.tryAct('register.addClock', { ownerId, ...again })).problems).toEqual([
      'clock.likely serial',
    ])
    expect((await takeIn({ name: 'T. Okafor' }, { ...again, otherThan: [clockId] })).status).toBe(200)
  })

  it('is shown with whose it is and the repair it is in the shop for', async () => {
    const { clockId, ownerId } = await takeInPell(shop)
    expect(await like('clocks', { maker: '', serial: 'OL2214' })).toEqual([
      {
        id: clockId,
        form: 'bracket',
        maker: bracketClock.maker,
        serial: bracketClock.serial,
        ownerId,
        owner: 'Rosamund Pell',
        inShop: 2201,
      },
    ])
    expect(await like('clocks', { maker: 'P. Hask', serial: 'OL2214' })).toEqual([])
  })

  it('is found by a serial of one or two signs too', async () => {
    const { id } = await shop.act('register.addOwner', { name: 'Aster House School' })
    const { id: clockId } = await shop.act('register.addClock', { ownerId: id, ...mantel, serial: 'A7' })
    expect(await like('clocks', { maker: '', serial: 'a-7' })).toMatchObject([{ id: clockId }])
    expect(await like('clocks', { maker: '', serial: 'a8' })).toEqual([])
  })
})
