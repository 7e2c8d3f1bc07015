import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { minor } from '../../../core/money/minor.ts'
import { comebackRates } from '../../../core/reports/comebacks.ts'
import { earnedByPerson } from '../../../core/reports/earned.ts'
import { estimatedAgainstWorked } from '../../../core/reports/hours.ts'
import { stockWorth } from '../../../core/reports/stock.ts'

const key = fc.constantFrom('overhaul', 'service', 'repair')
const minutes = fc.integer({ min: 0, max: 100_000 })
const sum = <T>(rows: readonly T[], of: (row: T) => number) => rows.reduce((total, row) => total + of(row), 0)

describe('estimated against worked hours', () => {
  it('tells over and under apart and puts the most frequent first', () => {
    const rows = estimatedAgainstWorked([
      { key: 'service', estimatedMinutes: 240, workedMinutes: 300 },
      { key: 'overhaul', estimatedMinutes: 600, workedMinutes: 570 },
      { key: 'overhaul', estimatedMinutes: 400, workedMinutes: 380 },
    ])
    expect(rows).toEqual([
      {
        key: 'overhaul',
        repairs: 2,
        estimatedMinutes: 1000,
        workedMinutes: 950,
        overMinutes: -50,
        workedPercent: 95,
      },
      {
        key: 'service',
        repairs: 1,
        estimatedMinutes: 240,
        workedMinutes: 300,
        overMinutes: 60,
        workedPercent: 125,
      },
    ])
  })

  it('counts every repair once, and loses no minute', () => {
    const facts = fc.array(fc.record({ key, estimatedMinutes: minutes, workedMinutes: minutes }))
    fc.assert(
      fc.property(facts, all => {
        const rows = estimatedAgainstWorked(all)
        expect(sum(rows, row => row.repairs)).toBe(all.length)
        expect(sum(rows, row => row.estimatedMinutes)).toBe(sum(all, fact => fact.estimatedMinutes))
        expect(sum(rows, row => row.overMinutes)).toBe(
          sum(all, fact => fact.workedMinutes - fact.estimatedMinutes),
        )
      }),
    )
  })

  it('gives no percentage of nothing', () => {
    const [row] = estimatedAgainstWorked([{ key: 'set-up', estimatedMinutes: 0, workedMinutes: 30 }])
    expect(row?.workedPercent).toBe(null)
  })
})

describe('comebacks', () => {
  // The trade's own yardstick (trade reference §9, common practice): 1 in 20 is the background.
  it('one in twenty is five of a hundred', () => {
    const facts = Array.from({ length: 20 }, (_, n) => ({ key: '2027-03', cameBack: n === 7 }))
    expect(comebackRates(facts)).toEqual([{ key: '2027-03', handedOver: 20, cameBack: 1, percent: 5 }])
  })

  it('counts every hand-over once, names in order, and never more comebacks than hand-overs', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ key, cameBack: fc.boolean() })), facts => {
        const rows = comebackRates(facts)
        expect(sum(rows, row => row.handedOver)).toBe(facts.length)
        expect(sum(rows, row => row.cameBack)).toBe(facts.filter(fact => fact.cameBack).length)
        expect(rows.map(row => row.key)).toEqual(rows.map(row => row.key).toSorted())
        for (const { percent } of rows) expect(percent).toSatisfy((n: number) => n >= 0 && n <= 100)
      }),
    )
  })
})

describe('what the bench hours earned', () => {
  const worked = fc.uniqueArray(
    fc.record({ personId: fc.constantFrom(null, 1, 2, 3), minutes: fc.integer({ min: 0, max: 3000 }) }),
    { selector: one => one.personId },
  )
  const labourMinor = fc.integer({ min: -1e9, max: 1e9 }).map(minor)

  it('shares the labour of a repair by the minutes worked on it, to the last penny', () => {
    const { rows, total, unworkedMinor } = earnedByPerson([
      {
        labourMinor: minor(10_000),
        worked: [
          { personId: 1, minutes: 60 },
          { personId: 2, minutes: 120 },
        ],
      },
      { labourMinor: minor(2_500), worked: [] },
    ])
    expect(rows).toEqual([
      { personId: 2, minutes: 120, earnedMinor: 6_667, perHourMinor: 3_334 },
      { personId: 1, minutes: 60, earnedMinor: 3_333, perHourMinor: 3_333 },
    ])
    expect(total).toEqual({ minutes: 180, earnedMinor: 10_000, perHourMinor: 3_333 })
    expect(unworkedMinor).toBe(2_500)
  })

  it('all shares and what nobody worked for add up to what was billed', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ labourMinor, worked }), { maxLength: 20 }), repairs => {
        const { rows, unworkedMinor, total } = earnedByPerson(repairs)
        const billed = sum(repairs, repair => repair.labourMinor)
        expect(sum(rows, row => row.earnedMinor) + unworkedMinor).toBe(billed)
        expect(total.earnedMinor + unworkedMinor).toBe(billed)
        expect(total.minutes).toBe(sum(rows, row => row.minutes))
      }),
    )
  })
})

describe('what the stock is worth', () => {
  it('is the sum of pieces at cost, and what is not there counts for nothing', () => {
    const part = fc.record({
      kind: fc.constantFrom('mainspring', 'line', 'glass'),
      inStock: fc.nat(10_000),
      unitCostMinor: fc.nat(1_000_000).map(minor),
    })
    fc.assert(
      fc.property(fc.array(part), parts => {
        const rows = stockWorth(parts)
        expect(sum(rows, row => row.valueMinor)).toBe(sum(parts, p => p.inStock * p.unitCostMinor))
        expect(sum(rows, row => row.pieces)).toBe(sum(parts, p => p.inStock))
        expect(rows.map(row => row.valueMinor)).toEqual(
          rows.map(row => row.valueMinor).toSorted((a, b) => b - a),
        )
      }),
    )
  })
})
