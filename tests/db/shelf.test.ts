import { sql } from 'drizzle-orm'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { enterLabour } from '../../db/books/labour.ts'
import { read } from '../../db/books/readings.ts'
import { pass, startRunIn } from '../../db/books/shelf.ts'
import { addPlace } from '../../db/books/shop.ts'
import { runView, shelfView } from '../../db/read/shelf.ts'
import { runRow } from '../../db/rules/run-log.ts'
import { workLedger } from './work-ledger.ts'

let shop: ReturnType<typeof workLedger>
let runId: number
beforeAll(() => {
  shop = workLedger()
  const doing = shop.doing('2027-03-01T10:00:00.000Z')
  const labour = { task: 'clean' as const, from: null, to: null, minutes: 30, on: '2027-03-01', note: '' }
  enterLabour(shop.ledger, doing, { repairId: shop.repairId, ...labour })
  const place = addPlace(shop.ledger, doing, { name: 'Stand 1', kind: 'stand' })
  runId = startRunIn(shop.ledger, doing, {
    repairId: shop.repairId,
    placeId: place.id,
    start: null,
    limitPerDay: null,
    steadyWithin: null,
    error: '0',
  }).id
})
afterAll(() => shop.close())

const nothing = {
  at: null,
  left: null,
  wound: false,
  stopped: false,
  nutTurns: '',
  event: null,
  hour: null,
  half: null,
  quarter: null,
  twelveRight: false,
  fourRight: false,
  selfCorrected: null,
  silent: null,
  repeats: null,
  inBeat: null,
  strikeRight: null,
  chimeRight: null,
  temperatureC: null,
  note: '',
  sure: false,
}

describe('a torsion clock on the shelf', () => {
  it('is planned over the weeks of the shop’s policy and may differ by 5 minutes a week (GO)', () => {
    expect(runRow(shop.ledger.read, runId)).toMatchObject({ readyOn: '2027-03-29', limitPerDay: '43' })
  })

  it('keeps a log of more than a year, every reading of it in the figures', () => {
    const start = Date.parse('2027-03-01T10:00:00.000Z')
    for (let n = 8; n <= 400; n += 8) {
      const at = new Date(start + n * 86_400_000).toISOString()
      read(shop.ledger, shop.doing(at), { ...nothing, runId, error: `+${n * 3}` })
    }
    const at = new Date(start + 401 * 86_400_000).toISOString()
    const { run } = runView(shop.ledger.read, runId, at)
    expect(run.log).toHaveLength(51)
    expect(run.figures.ratePerDay).toBeCloseTo(3, 9)
    expect(run.figures.scatterSeconds).toBeCloseTo(0, 9)
    expect(run.dues.filter(due => due.kind === 'reading').every(due => due.doneAt !== null)).toBe(true)
    expect(shelfView(shop.ledger.read, at).rows[0]).toMatchObject({ day: 402, ofDays: 28 })
  })

  it('has readings that nothing can change or delete', () => {
    const change = () => shop.ledger.write(tx => tx.run(sql`UPDATE readings SET error_ms = 0`))
    const shorten = () => shop.ledger.write(tx => tx.run(sql`DELETE FROM readings`))
    expect(change).toThrow()
    expect(shorten).toThrow()
  })

  it('keeps the figures it passed with, whatever the sums say later', () => {
    const at = '2028-04-30T10:00:00.000Z'
    pass(shop.ledger, shop.doing(at), { runId, reason: 'Weeks beyond its test', seen: null })
    const run = runRow(shop.ledger.read, runId)
    expect(run).toMatchObject({ outcome: 'passed', endedAt: at, decidedBy: shop.personId })
    expect(run.figures).toMatchObject({ verdict: 'not-yet' })
    expect(runView(shop.ledger.read, runId, at).run.figures).toEqual(run.figures)
  })
})
