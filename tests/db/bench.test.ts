import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { labourMinutes } from '../../core/labour/minutes.ts'
import { enterLabour, startLabour, stopLabour } from '../../db/books/labour.ts'
import { openLedger } from '../../db/file/ledger.ts'
import { labourOf } from '../../db/read/bench-card.ts'
import { repairRow } from '../../db/rules/facts.ts'
import { random } from '../chance.ts'
import { migrations, now } from './temporary-ledger.ts'
import { workLedger } from './work-ledger.ts'

let shop: ReturnType<typeof workLedger>
beforeAll(() => {
  shop = workLedger()
})
afterAll(() => shop.close())

const zone = 'Europe/London'
const total = (at: string) => labourOf(shop.ledger.read, shop.repairId, at, zone).totalMinutes

describe('labour on record', () => {
  // The span holds midnight four times and 28 March 2027, when clocks in London go forward (Directive 2000/84/EC).
  it('adds up to the minutes that really passed, however often the clock is stopped and started', () => {
    const from = Date.parse('2027-03-26T18:00:00.000Z')
    let day = 0
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 15 * 3_600_000 }), { minLength: 1, maxLength: 6 }),
        steps => {
          const begin = from + day++ * 7 * 86_400_000
          const moments = [begin]
          for (const step of steps) moments.push((moments.at(-1) ?? begin) + step)
          const iso = (ms: number) => new Date(ms).toISOString()
          const [first, last] = [iso(begin), iso(moments.at(-1) ?? begin)]
          const before = total(first)
          for (const [i, ms] of moments.entries()) {
            const doing = shop.doing(iso(ms))
            if (i > 0) stopLabour(shop.ledger, doing, { endedAt: null })
            if (i < moments.length - 1)
              startLabour(shop.ledger, doing, { repairId: shop.repairId, task: 'clean', switch: false })
          }
          expect(total(last) - before).toBe(labourMinutes(first, last))
        },
      ),
      { numRuns: 12 },
    )
  }, 30_000)

  it('survives the closing of the ledger: a clock that ran goes on running', () => {
    const other = workLedger()
    startLabour(other.ledger, other.doing('2027-03-02T09:00:00.000Z'), {
      repairId: other.repairId,
      task: 'oil',
      switch: false,
    })
    other.ledger.close()
    const again = openLedger(other.ledger.file, { migrations, now, random })
    try {
      expect(repairRow(again.read, other.repairId).stage).toBe('on-the-bench')
      const stopped = stopLabour(again, other.doing('2027-03-02T10:10:00.000Z'), { endedAt: null })
      expect(stopped.minutes).toBe(70)
    } finally {
      again.close()
      other.close()
    }
  })

  it('typed in local times counts the night the clocks go back by what passed', () => {
    const entry = {
      repairId: shop.repairId,
      task: 'test' as const,
      from: '2026-10-25T00:30',
      to: '2026-10-25T02:30',
      minutes: null,
      on: null,
      note: '',
    }
    expect(enterLabour(shop.ledger, shop.doing('2029-01-01T09:00:00.000Z'), entry).minutes).toBe(180)
  })
})
