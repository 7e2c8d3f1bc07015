import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import type { WorkingKind } from '../../core/papers/kinds.ts'
import type { PaperSize } from '../../core/papers/sizes.ts'
import { sizesOf } from '../../core/papers/sizes.ts'
import { demoLedger } from '../../electron/day/demo-shop.ts'
import { places } from '../../electron/places.ts'
import { random } from '../chance.ts'
import { temporaryFolder } from '../db/temporary-ledger.ts'
import { codesOf, infoOf, textOf } from '../papers/reading.ts'
import { openTestShop, rosamund, type Shop, takeInPell } from './handler-fixture.ts'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 })

type Handle = (request: Request) => Promise<Response>

const paper = (handle: Handle, kind: string, id: number | string, size?: PaperSize | string) =>
  handle(new Request(`http://ledger/papers/of/${kind}/${id}.pdf${size ? `?size=${size}` : ''}`))

const bytesOf = async (response: Response) => Buffer.from(await response.arrayBuffer())

const problemsOf = async (response: Response) =>
  ((await response.json()) as { problems: { code: string; field: string; message: string }[] }).problems

describe('the working papers of the demonstration shop', () => {
  const place = temporaryFolder()
  let demo: Awaited<ReturnType<typeof demoLedger>>
  beforeAll(async () => {
    demo = await demoLedger({
      file: join(place.folder, 'demo.countwheel'),
      migrations: places.migrations,
      random,
    })
  })
  afterAll(() => {
    demo.ledger.close()
    place.remove()
  })

  const view = async (path: string) =>
    JSON.parse(await (await demo.handle(new Request(`http://ledger/api/pages/${path}`))).text())

  /** Draws one paper for each id and says how many came; those refused must say why. */
  async function drawn(kind: WorkingKind, ids: readonly number[], refused: readonly string[] = []) {
    let count = 0
    for (const id of ids) {
      const response = await paper(demo.handle, kind, id)
      if (response.status === 200) {
        const pdf = await bytesOf(response)
        expect(pdf.subarray(0, 5).toString(), `${kind} ${id}`).toBe('%PDF-')
        count += 1
      } else
        expect(
          (await problemsOf(response)).map(({ code }) => code),
          `${kind} ${id}`,
        ).toEqual([expect.toBeOneOf([...refused])])
    }
    return count
  }

  it('can all be drawn: those of every repair, estimate, run and owner', async () => {
    const ids = (rows: readonly { id: number }[]) => rows.map(({ id }) => id)
    const all = demo.played.filter(({ act }) => act === 'counter.takeIn')
    const repairs = ids(all.map(({ result }) => result as { id: number }))
    expect(repairs.length).toBeGreaterThanOrEqual(12)
    for (const kind of ['tags', 'condition-report', 'bench-card', 'hand-over'] as const)
      expect(await drawn(kind, repairs), kind).toBe(repairs.length)
    for (const kind of ['ready-letter', 'uncollected-letter'] as const)
      expect(await drawn(kind, repairs, ['standing.notReady', 'standing.collected']), kind).toBeGreaterThan(0)
    const of = (act: string) =>
      ids(demo.played.filter(played => played.act === act).map(({ result }) => result as { id: number }))
    const estimates = of('estimates.write')
    expect(await drawn('go-ahead', estimates, ['estimate.notSent'])).toBeGreaterThan(5)
    const runs = demo.played
      .filter(({ act }) => act === 'shelf.startRunIn')
      .map(({ result }) => (result as { id: number }).id)
    expect(await drawn('run-in-certificate', runs)).toBe(runs.length)
    const { rows: owners } = await view('owners')
    expect(await drawn('statement', ids(owners))).toBe(owners.length)
  })

  it('come on each of their sizes, and drawn twice they are the same to the byte', async () => {
    for (const kind of ['tags', 'condition-report', 'bench-card'] as const)
      for (const size of sizesOf[kind]) {
        const [one, two] = [await paper(demo.handle, kind, 1, size), await paper(demo.handle, kind, 1, size)]
        expect(one.headers.get('content-disposition')).toBe(`inline; filename="${kind}-2201.pdf"`)
        expect((await bytesOf(one)).equals(await bytesOf(two))).toBe(true)
      }
  })

  it('carry a code on the tags that finds the repair', async () => {
    const [code] = codesOf(await bytesOf(await paper(demo.handle, 'tags', 1)))
    const found = await demo.handle(new Request(`http://ledger/api/find?q=${encodeURIComponent(code ?? '')}`))
    expect(await found.text()).toContain('"number":"2201"')
  })

  it('change nothing in the ledger', async () => {
    const everything = () => {
      const copy = join(place.folder, 'copy')
      demo.ledger.backUp(copy)
      return readFileSync(copy)
    }
    const before = everything()
    for (const kind of Object.keys(sizesOf)) await paper(demo.handle, kind, 1)
    expect(everything().equals(before)).toBe(true)
  })
})

describe('papers that are refused', () => {
  let shop: Shop
  beforeAll(async () => {
    shop = await openTestShop()
    await takeInPell(shop)
  })
  afterAll(() => shop.close())

  it('a size the paper does not come on, with a sentence that names those it does', async () => {
    const response = await paper(shop.handle, 'bench-card', 1, 'label62x29')
    expect(response.status).toBe(422)
    expect(await problemsOf(response)).toEqual([
      {
        code: 'paper.size',
        field: 'size',
        message: 'Bench card does not fit on label 62 × 29 mm. It comes on A4, Letter.',
      },
    ])
    const issued = await shop.handle(new Request('http://ledger/papers/1.pdf?size=label4x6'))
    expect((await problemsOf(issued))[0]?.code).toBe('paper.size')
  })

  it('a size, kind or number that there is not', async () => {
    expect((await paper(shop.handle, 'tags', 1, 'a0')).status).toBe(422)
    expect((await paper(shop.handle, 'poster', 1)).status).toBe(422)
    expect((await paper(shop.handle, 'tags', 99)).status).toBe(404)
    expect((await paper(shop.handle, 'tags', '0')).status).toBe(422)
    expect((await paper(shop.handle, 'tags', '1e9')).status).toBe(422)
    expect((await paper(shop.handle, 'statement', 99)).status).toBe(404)
    expect((await paper(shop.handle, 'go-ahead', 99)).status).toBe(404)
    expect((await paper(shop.handle, 'run-in-certificate', 99)).status).toBe(404)
  })

  it('a letter about a clock that is not ready, and the form for an estimate that was not sent', async () => {
    for (const kind of ['ready-letter', 'uncollected-letter'] as const)
      expect((await problemsOf(await paper(shop.handle, kind, 1)))[0]?.code).toBe('standing.notReady')
    const lines = [{ kind: 'labour', description: 'Overhaul', quantity: '1', unit: '48.00' }]
    await shop.act('estimates.write', { repairId: 1, lines })
    expect((await problemsOf(await paper(shop.handle, 'go-ahead', 1)))[0]?.code).toBe('estimate.notSent')
  })

  it('labels are drawn where no size is asked, since tags come on nothing else; the claim check comes on A6', async () => {
    const tags = await bytesOf(await paper(shop.handle, 'tags', 1))
    expect(infoOf(tags)['Page size']).toContain('175.75 x 82.2')
    const slip = await shop.handle(new Request('http://ledger/papers/1.pdf?size=a6'))
    expect(infoOf(await bytesOf(slip))['Page size']).toContain('297.64 x 419.53')
  })
})

describe('the statement of an account', () => {
  let shop: Shop
  beforeAll(async () => {
    shop = await openTestShop()
  })
  afterAll(() => shop.close())

  it('ends with what is due on the owner’s repairs, also what was issued to a duplicate merged into the owner', async () => {
    const lines = [{ kind: 'labour', description: 'Overhaul', quantity: '2', unit: '48.00' }]
    const invoiced = async (repairId: number) => {
      const estimate = await shop.act('estimates.write', { repairId, lines })
      await shop.act('estimates.send', { estimateId: estimate.id, way: 'in-person' })
      await shop.act('estimates.recordWord', {
        estimateId: estimate.id,
        answer: 'go-ahead',
        who: 'R. Pell',
        way: 'telephone',
      })
      await shop.act('bench.declareReady', { repairId, reason: 'Tested before' })
      return shop.act('accounts.invoice', { repairId, lines })
    }
    const first = await takeInPell(shop)
    await shop.act('accounts.pay', { repairId: first.id, amount: '20', method: 'cash' })
    shop.clock.at = '2027-03-01T10:00:00.000Z'
    await invoiced(first.id)
    shop.clock.at = '2027-03-02T09:20:00.000Z'
    const twin = await takeInPell(shop, {
      owner: { ...rosamund, name: 'R. Pell', otherThan: [first.ownerId] },
    })
    await invoiced(twin.id)
    shop.clock.at = '2027-03-02T11:00:00.000Z'
    await shop.act('accounts.pay', { repairId: twin.id, amount: '50', method: 'card' })
    await shop.act('register.mergeOwners', { ownerId: twin.ownerId, intoId: first.ownerId })
    const text = textOf(await bytesOf(await paper(shop.handle, 'statement', first.ownerId)))
    // 2 h × 48.00 with 20 % tax is 115.20, twice; 20.00 and 50.00 were paid.
    expect(text).toContain('Payment, receipt R0001, cash 2201 20.00 −20.00')
    expect(text).toContain('Invoice I0001 2201 115.20 95.20')
    expect(text).toContain('Invoice I0002 2202 115.20 210.40')
    expect(text).toContain('To pay £160.40')
    const { dueMinor } = await shop.view(`owners/${first.ownerId}`)
    expect(dueMinor).toBe(16040)
    const merged = await paper(shop.handle, 'statement', twin.ownerId)
    expect((await problemsOf(merged))[0]?.code).toBe('owner.merged')
  })
})
