import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { reserved, whoMay } from '../../core/people/may.ts'
import { type Role, roles } from '../../core/people/roles.ts'
import { api } from '../../electron/server/api.ts'
import { exports } from '../../electron/server/requests/exports.ts'
import { openDesk } from '../../electron/shop/desk.ts'
import { openTestShop, rosamund, type Shop } from './handler-fixture.ts'

let shop: Shop
const ids: Partial<Record<Role | 'gone', number>> = {}
beforeAll(async () => {
  shop = await openTestShop(undefined, { played: false })
  for (const role of roles)
    ids[role] = (await shop.act('shop.addPerson', { name: `Somebody ${role}`, roles: [role] })).id
  ids.gone = (await shop.act('shop.addPerson', { name: 'Somebody gone', roles: ['owner'] })).id
  await shop.act('shop.setPersonActive', { personId: ids.gone, active: false, seen: null })
})
afterAll(() => shop.close())

const acts = [
  ...new Set(api.routes.filter(({ method }) => method === 'POST').map(({ path }) => path)),
].filter(path => path !== '/backup')
const named = (id: number | undefined) => (id === undefined ? {} : { 'Countwheel-Person': String(id) })
const codesOf = async (path: string, id: number | undefined, init: RequestInit = {}) => {
  const headers = { 'Content-Type': 'application/json', ...named(id) }
  const { body } = await shop.ask(path, { ...init, headers })
  return (body.problems ?? []).map(({ code }: { code: string }) => code)
}
/** What an act is refused for before it is looked at; an empty input would be refused for itself. */
const refused = ['act.reserved', 'act.nameNeeded', 'person.notHere']
const refusalOf = async (path: string, id: number | undefined) =>
  (await codesOf(`/api${path}`, id, { method: 'POST', body: '{}' })).find((code: string) =>
    refused.includes(code),
  )

describe('each act in each role', () => {
  it.each(acts)('%s', async path => {
    const some = whoMay(path.slice(1).replace('/', '.'))
    for (const role of roles)
      expect([role, await refusalOf(path, ids[role])]).toEqual([
        role,
        some && !some.includes(role) ? 'act.reserved' : undefined,
      ])
    expect(await refusalOf(path, undefined)).toBe(some ? 'act.nameNeeded' : undefined)
    expect(await refusalOf(path, ids.gone)).toBe('person.notHere')
  })

  it('every reserved act is one of them, but what is no act', () => {
    const known = acts.map(path => path.slice(1).replace('/', '.'))
    expect(Object.keys(reserved).filter(act => !known.includes(act))).toEqual([
      'exports.take',
      'restore.bringBack',
    ])
  })
})

describe('taking the books out', () => {
  const files = [...new Set(exports.routes.map(({ path }) => path))].filter(path => !path.includes('*'))
  const at = (path: string) => `/exports${path.replace(/:(file|name)\{.*\}/, 'owners.csv')}`

  it.each([...files.map(at), '/api/pages/dayFile'])('%s is an owner’s, but for the dates', async path => {
    const everybodys = path === '/exports/dates.ics'
    const codes = async (id: number | undefined) =>
      (await codesOf(path, id)).filter((code: string) => refused.includes(code))
    expect(await codes(ids.owner)).toEqual([])
    expect(await codes(ids.bench)).toEqual(everybodys ? [] : ['act.reserved'])
    expect(await codes(undefined)).toEqual(everybodys ? [] : ['act.nameNeeded'])
  })
})

describe('whoever no longer works here', () => {
  it('still sees the pages, so that another name can be chosen', async () => {
    expect(await codesOf('/api/pages/counter', ids.gone)).toEqual([])
  })

  it('keeps no photograph either', async () => {
    expect(await codesOf('/api/photographs', ids.gone, { method: 'PUT', body: 'x' })).toEqual([
      'person.notHere',
    ])
  })
})

it('a refusal names who may', async () => {
  const { body } = await shop.ask('/api/accounts/pay', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', ...named(ids.bench) },
    body: '{}',
  })
  expect(body.problems[0].message).toMatch(
    /^Only an owner of the shop or somebody of the counter may do this\./,
  )
})

it('what was done stays answered under its key, though the role is gone', async () => {
  const key = 'a-key-of-eight'
  const { id: personId } = await shop.act('shop.addPerson', { name: 'Bram Tolland', roles: ['owner'] })
  const ask = (id: number | null) => {
    shop.clock.person = id
    return shop.tryAct('shop.addPlace', { name: 'Shelf A1', kind: 'shelf' }, key)
  }
  const first = await ask(personId)
  expect(first.status).toBe(200)
  shop.clock.person = ids.owner ?? null
  await shop.act('shop.changePerson', { personId, roles: ['bench'], seen: null })
  expect(await ask(personId)).toEqual(first)
})

it('a shop with one person asks for no name', async () => {
  const alone = await openTestShop(undefined, { played: false })
  alone.clock.person = null
  await alone.act('register.addOwner', rosamund)
  await alone.act('shop.closeOn', { days: [{ onDate: '2027-05-03', name: 'Holiday' }] })
  alone.close()
})

it('a backup is brought back by an owner alone while the ledger is open', async () => {
  const other = await openTestShop()
  const { id } = await other.act('shop.addPerson', { name: 'Bram Tolland', roles: ['bench', 'counter'] })
  other.ledger.close()
  const desk = await openDesk({ file: other.file, demo: false, asks: true })
  const codes = async (person: object) => {
    const headers = { 'Content-Type': 'application/json', ...person }
    const body = JSON.stringify({ path: `${other.file}.nothing-there` })
    const init = { method: 'POST', headers, body }
    const response = await desk.handle(new Request('http://ledger/api/restore/bringBack', init))
    return ((await response.json()) as { problems: { code: string }[] }).problems.map(({ code }) => code)
  }
  expect(await codes(named(id))).toEqual(['act.reserved'])
  expect(await codes({})).toEqual(['act.nameNeeded'])
  expect(await codes(named(1))).toEqual(['restore.nothingThere'])
  await desk.close()
  other.close()
})
