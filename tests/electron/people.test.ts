import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openTestShop, type Shop } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const codes = ({ problems }: { problems: { code: string; field: string }[] }) =>
  problems.map(({ code, field }) => `${code} ${field}`)
const people = async () => (await shop.view('shop')).people
const bram = { name: 'Bram Tolland', roles: ['counter', 'bench'], initials: 'BT', benchHours: '20' }

describe('a person', () => {
  it('who opens the shop is its owner', async () => {
    expect(await people()).toMatchObject([{ name: 'Ines Marrow', active: true, roles: ['owner'] }])
  })

  it('is entered with roles in their order, initials and bench hours', async () => {
    await shop.act('shop.addPerson', bram)
    expect((await people())[0]).toMatchObject({ ...bram, roles: ['bench', 'counter'] })
  })

  it('has at least one role, and no more bench hours than a week has', async () => {
    const nothing = await shop.tryAct('shop.addPerson', { ...bram, roles: [] })
    expect(codes(nothing.body)).toEqual(['input.tooShort roles'])
    const unwell = await shop.tryAct('shop.addPerson', { ...bram, benchHours: '169' })
    expect(codes(unwell.body)).toEqual(['person.benchHours benchHours'])
    expect(await people()).toHaveLength(1)
  })

  it('is changed only as it was seen', async () => {
    const { id: personId } = await shop.act('shop.addPerson', bram)
    const change = { personId, roles: ['bench'], initials: 'BT', benchHours: '30' }
    const seen = { roles: 'bench counter', initials: 'BT', benchHours: '20' }
    await shop.act('shop.changePerson', { ...change, seen })
    expect((await people())[0]).toMatchObject({ roles: ['bench'], benchHours: '30' })
    const late = await shop.tryAct('shop.changePerson', { ...change, seen })
    expect(codes(late.body)).toEqual(['record.changedMeanwhile roles', 'record.changedMeanwhile benchHours'])
  })
})

describe('the last owner who works here', () => {
  const about = { roles: ['bench'], initials: '', benchHours: '', seen: null }

  it('stays one, and stays', async () => {
    const { id } = await shop.act('shop.addPerson', bram)
    const leave = { personId: 1, active: false, seen: null }
    expect(codes((await shop.tryAct('shop.setPersonActive', leave)).body)).toEqual([
      'person.lastOwner active',
    ])
    const changed = await shop.tryAct('shop.changePerson', { personId: 1, ...about })
    expect(codes(changed.body)).toEqual(['person.lastOwner roles'])
    await shop.act('shop.changePerson', { ...about, personId: id, roles: ['owner'] })
    await shop.act('shop.changePerson', { personId: 1, ...about })
    expect(await people()).toMatchObject([{ roles: ['owner'] }, { roles: ['bench'] }])
  })
})
