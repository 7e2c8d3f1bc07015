import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { api } from '../../electron/server/api.ts'
import {
  bracketClock,
  estimateLines,
  openTestShop,
  rosamund,
  type Shop,
  takeInPell,
} from './handler-fixture.ts'

let shop: Shop
beforeAll(async () => {
  shop = await openTestShop()
  await takeInPell(shop)
})
afterAll(() => shop.close())

// Backing up changes nothing in the ledger and so is no act.
const acts = api.routes
  .filter(route => route.method === 'POST' && route.path !== '/backup')
  .map(route => route.path)
  .filter((path, index, all) => all.indexOf(path) === index)
const views = api.routes.filter(route => route.method === 'GET').map(route => route.path)

const post = (path: string, body: string) =>
  shop.ask(`/api${path}`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body })

describe('the edge of the ledger', () => {
  it('names every act area.verb, as the day book does', () => {
    expect(acts.length).toBeGreaterThan(20)
    for (const path of acts) expect(path).toMatch(/^\/[a-z][A-Za-z]*\/[a-z][A-Za-z]*$/)
  })

  it('answers an unknown request, a broken JSON and a wrong type with problems and never with a stack', async () => {
    const answers = [
      await shop.ask('/api/nothing/here'),
      await post('/counter/takeIn', '{"owner":'),
      await post('/counter/takeIn', '[]'),
      await post('/counter/takeIn', 'null'),
      await post('/counter/takeIn', '"text"'),
      await shop.ask('/api/pages/repairs/9999'),
      await shop.ask('/api/pages/repairs/0x1'),
      await shop.ask('/api/pages/tax?from=2027-02-30&to=x'),
      await shop.ask('/papers/1e3.pdf'),
      await shop.ask('/papers/999.pdf'),
      await shop.ask('/api/counter/takeIn'),
    ]
    expect(answers.map(answer => answer.status)).toEqual([
      404, 400, 422, 422, 422, 404, 422, 422, 422, 404, 404,
    ])
    for (const { body } of answers) {
      expect(body.problems.length).toBeGreaterThan(0)
      expect(JSON.stringify(body)).not.toMatch(/\bat .*\.ts:\d+|node_modules|SQLITE/)
      for (const problem of body.problems) expect(problem.message).toMatch(/[.)]$/)
    }
  })

  it('refuses a person who is not in the ledger', async () => {
    for (const person of ['99', '0', '-1', '1.5', 'Ines', '9999999999999999999']) {
      const { status } = await shop.ask('/api/pages/counter', { headers: { 'Countwheel-Person': person } })
      expect({ person, status }).toEqual({ person, status: 404 })
    }
  })

  it('answers any JSON whatever, on every act, with 4xx and problems, and writes nothing', async () => {
    const before = JSON.stringify((await shop.view('dayBook')).rows)
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...acts),
        fc.jsonValue({ noneOf: [] } as never),
        async (path, value) => {
          const { status, body } = await post(path, JSON.stringify(value))
          expect({ path, status: status >= 400 && status < 500 }).toEqual({ path, status: true })
          expect(body.problems.length).toBeGreaterThan(0)
        },
      ),
      { numRuns: 400 },
    )
    expect(JSON.stringify((await shop.view('dayBook')).rows)).toBe(before)
  })

  it('answers good entries spoilt in one field with 4xx and that field, never 5xx', async () => {
    const bad = fc.oneof(
      fc.constant(null),
      fc.constant(''),
      fc.constant(-1),
      fc.constant(1e308),
      fc.constant('9'.repeat(400)),
      fc.constant('\u0000'),
      fc.constant('\ud800'),
      fc.constant({}),
      fc.constant([[]]),
      fc.constant('1e5'),
      fc.constant('1,000.00'),
      fc.constant('2027-13-45'),
    )
    const good: Record<string, Record<string, unknown>> = {
      '/counter/takeIn': {
        owner: rosamund,
        clock: bracketClock,
        fault: 'Stops',
        estimatedOn: '2027-04-01',
        fee: '20.00',
      },
      '/estimates/write': { repairId: 1, lines: estimateLines, high: '700' },
      '/register/addOwner': rosamund,
      '/register/addClock': { ownerId: 1, ...bracketClock },
      '/accounts/pay': { repairId: 1, amount: '5.00', method: 'cash', tendered: '10.00' },
    }
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...Object.keys(good)), fc.nat(), bad, async (path, pick, value) => {
        const entry = good[path] ?? {}
        const field = Object.keys(entry)[pick % Object.keys(entry).length] ?? ''
        const { status } = await post(path, JSON.stringify({ ...entry, [field]: value }))
        expect({ path, field, value, ok: status < 500 }).toEqual({ path, field, value, ok: true })
      }),
      { numRuns: 300 },
    )
  })

  it('never changes anything by GET', async () => {
    const before = JSON.stringify((await shop.view('dayBook')).rows)
    for (const path of views)
      await shop.ask(`/api${path.replace(/:\w+/, '1')}?q=pell&from=2027-01-01&to=2027-12-31`)
    expect(JSON.stringify((await shop.view('dayBook')).rows)).toBe(before)
  })
})

describe('find', () => {
  const find = async (typed: string) =>
    (await shop.ask(`/api/find?q=${encodeURIComponent(typed)}`)).body.results
  const kinds = async (typed: string) => (await find(typed)).map((r: { kind: string }) => r.kind)

  it('finds an owner by the beginning of a name, by street, and by digits of the phone', async () => {
    for (const typed of [
      'pel',
      'ROSAM',
      'rosamund pe',
      'quay st',
      '7946 0018',
      '0018',
      '020 7946 0018',
      '02079460018',
    ])
      expect(await kinds(typed)).toContain('owner')
  })

  it('finds with one wrong letter too, where nothing is found as it was typed; a number is never guessed at', async () => {
    for (const typed of ['rosamumd', 'rosmund pell', 'pell rosamnud', 'rosamumd p'])
      expect(await kinds(typed)).toContain('owner')
    for (const typed of ['rosemumd', 'xyzz', '2211', '99999']) expect(await find(typed)).toEqual([])
  })

  it('finds a clock by its maker and by any part of its serial, however it is spaced', async () => {
    for (const typed of ['oller', 'OL-2214', 'ol2214', 'l22']) expect(await kinds(typed)).toContain('clock')
  })

  it('puts a repair first by its very number, also as its claim check’s code says it', async () => {
    for (const typed of ['2201', 'countwheel:2201'])
      expect((await find(typed))[0]).toMatchObject({ kind: 'repair', number: '2201' })
  })

  it('finds a paper by its number alone, so that a name finds people and their clocks', async () => {
    expect(await kinds('rosamund')).not.toContain('paper')
    const [paper] = await find('2201')
    const papers = (await find('2201')).filter((r: { kind: string }) => r.kind === 'paper')
    expect([paper.kind, papers.length > 0]).toEqual(['repair', true])
  })

  it('tells an owner with the contact that was typed, else the preferred one', async () => {
    await shop.act('register.addOwner', {
      name: 'Tobias Hallam',
      contacts: [
        { kind: 'phone', value: '020 7946 0777', preferred: true },
        { kind: 'e-mail', value: 'Tobias@Weir.example', preferred: false },
      ],
    })
    const contact = async (typed: string) => (await find(typed))[0].contact
    expect(await contact('tobias hal')).toBe('+44 20 7946 0777')
    expect(await contact('0777')).toBe('+44 20 7946 0777')
    expect(await contact('tobias@w')).toBe('tobias@weir.example')
  })

  it('folds accents', async () => {
    await shop.act('register.addOwner', { name: 'Żaneta Núñez-Öström' })
    for (const typed of ['zaneta', 'nunez', 'ostrom', 'Öst']) expect(await kinds(typed)).toContain('owner')
  })

  it('takes anything that is typed for words, never for a query', async () => {
    for (const typed of ['"', "'", '*', 'a OR', 'NEAR(', '-', '(', 'pell"*', '%', '\\', ' ', ''])
      expect(await find(typed)).toBeInstanceOf(Array)
  })
})

describe('what is missing and what is of the wrong type', () => {
  it('are told apart', async () => {
    const { body } = await post(
      '/estimates/recordWord',
      JSON.stringify({ answer: 'go-ahead', who: 7, way: 'telephone' }),
    )
    expect(body.problems.map((p: { code: string; field: string }) => [p.field, p.code])).toEqual([
      ['estimateId', 'input.required'],
      ['seen', 'input.required'],
      ['who', 'input.wrongType'],
    ])
  })
})
