import { afterEach, beforeEach, expect, it } from 'vitest'
import { openTestShop, rosamund, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const owner = (name: string, phone: string, more: object = {}) => ({
  name,
  contacts: [{ kind: 'phone', value: phone, preferred: true }],
  ...more,
})
const clock = (more: object = {}) => ({
  form: 'mantel',
  maker: 'Corrie & Vell',
  serial: 'CV 118',
  trains: 2,
  power: 'spring',
  duration: '8-day',
  ...more,
})
const rows = [
  { line: 2, owner: owner('Maud Dray', '01632 960447'), clock: clock() },
  { line: 3, owner: owner('Maud Dray', '+44 1632 960 447'), clock: clock({ serial: '', marks: 'gilt' }) },
  { line: 4, owner: { name: 'Theo Brandeis', address: 'Mill House' }, clock: null },
]

const counts = async () => {
  const { rows: shown } = await shop.view('owners')
  return shown.map((row: { name: string; clocks: number }) => `${row.name} ${row.clocks}`)
}

const dayBookRows = async () => (await shop.view('dayFile')).length

it('enters every owner once with all their clocks, in one act', async () => {
  const before = await dayBookRows()
  expect(await shop.act('register.import', { rows })).toEqual({
    ownersEntered: 2,
    ownersKnown: 1,
    clocksEntered: 2,
    clocksKnown: 0,
  })
  expect(await counts()).toEqual(['Maud Dray 2', 'Theo Brandeis 0'])
  expect(await dayBookRows()).toBe(before + 1)
  const { status, body } = await shop.ask('/api/find?q=960447')
  expect([status, JSON.stringify(body).includes('Maud Dray')]).toEqual([200, true])
})

it('changes nothing when the same list comes a second time', async () => {
  await shop.act('register.import', { rows })
  const before = await dayBookRows()
  const { status, body } = await shop.tryAct('register.import', { rows })
  expect([status, body.problems[0].code]).toEqual([422, 'import.nothingNew'])
  expect([await counts(), await dayBookRows()]).toEqual([['Maud Dray 2', 'Theo Brandeis 0'], before])
})

it('enters nothing at all when one line is wrong, and names the line’s field', async () => {
  const wrong = [...rows, { line: 5, owner: owner('Ada Nunn', 'no number') }]
  const { status, body } = await shop.tryAct('register.import', { rows: wrong })
  expect([status, body.problems.map((p: { field: string }) => p.field)]).toEqual([
    422,
    ['rows[3].owner.contacts[0].value'],
  ])
  expect(await counts()).toEqual([])
})

it('tells of every line what is wrong with it, whether it is on record, and who may be the same person', async () => {
  await takeInPell(shop)
  const asked = [
    { line: 2, owner: rosamund, clock: clock() },
    { line: 3, owner: owner('R. Pell', '020 7946 0018') },
    { line: 4, owner: owner('Rosamund Pell', '020 7946 0999') },
    { line: 5, owner: owner('', '020 7946 0777') },
    { line: 7, owner: owner('Ada Nunn', '12'), clock: clock({ trains: 9 }) },
    {
      line: 8,
      owner: owner('Ada Nunn', '01632 960111'),
      clock: clock({ maker: 'J. Ollerenshaw, Thornbury', serial: 'ol2214' }),
    },
  ]
  const { lines } = await shop.act('register.importCheck', { rows: asked })
  const told = lines.map((one: { line: number; problems: { code: string; field: string }[] }) => [
    one.line,
    ...one.problems.map(p => `${p.code} ${p.field}`),
  ])
  expect(told).toEqual([
    [2],
    [3],
    [4],
    [5, 'input.required owner.name'],
    [7, 'input.tooLarge clock.trains'],
    [8, 'clock.otherOwner clock.serial'],
  ])
  expect(lines.map((one: { ownerKnown: boolean }) => one.ownerKnown)).toEqual([
    true,
    false,
    false,
    false,
    false,
    false,
  ])
  expect(lines[1].likely).toMatchObject([{ name: 'Rosamund Pell', why: 'contact' }])
  expect(lines[2].likely).toMatchObject([{ name: 'Rosamund Pell', why: 'name' }])
})

it('puts a clock under the owner on record whom it was taken for', async () => {
  const { ownerId } = await takeInPell(shop)
  const same = { line: 2, sameAs: ownerId, owner: owner('R. Pell', '020 7946 0018'), clock: clock() }
  expect(await shop.act('register.import', { rows: [same] })).toMatchObject({
    ownersEntered: 0,
    clocksEntered: 1,
  })
  expect(await counts()).toEqual(['Rosamund Pell 2'])
  const again = await shop.tryAct('register.import', { rows: [{ ...same, sameAs: null }] })
  expect(again.body.problems[0].code).toBe('import.nothingNew')
})

it('refuses a list that puts one clock under two owners', async () => {
  const twice = [rows[0], { line: 3, owner: owner('Ada Nunn', '01632 960111'), clock: clock() }]
  const { body } = await shop.tryAct('register.import', { rows: twice })
  expect(body.problems).toMatchObject([{ code: 'clock.otherOwner', field: 'rows[1].clock.serial' }])
  expect(await counts()).toEqual([])
})

// The longest list that is taken: it may take its time.
it('enters a hundred thousand lines in one act, and nothing of them twice', async () => {
  const many = Array.from({ length: 100_000 }, (_, i) => ({
    line: i + 2,
    owner: owner(`Owner ${i}`, `+441632${String(100_000 + i)}`),
    clock: clock({ serial: `S ${i}` }),
  }))
  const result = await shop.act('register.import', { rows: many })
  expect(result).toMatchObject({ ownersEntered: 100_000, clocksEntered: 100_000 })
  expect((await shop.tryAct('register.import', { rows: many })).body.problems[0].code).toBe(
    'import.nothingNew',
  )
}, 300_000)
