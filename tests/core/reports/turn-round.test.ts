import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { meanTurnRounds, turnRound, turnRoundParts } from '../../../core/reports/turn-round.ts'

const day = 86_400_000
const on = (date: number) => new Date(Date.UTC(2027, 2, date, 9)).toISOString()

/** A repair told from the day it came in: word after 3 days, on the shelf from the 15th to the 29th. */
const overhaul = {
  takenInAt: on(1),
  allowedAt: on(4),
  readyAt: on(29),
  collectedAt: on(31),
  waits: [{ from: on(6), until: on(10) }],
  runIns: [{ from: on(15), until: on(29) }],
}

describe('turn-round', () => {
  it('tells the test weeks on the shelf apart from bench, waits and the time until the word', () => {
    expect(turnRound(overhaul)).toEqual({
      word: 3 * day,
      bench: 7 * day,
      waiting: 4 * day,
      'run-in': 14 * day,
      'to-collect': 2 * day,
    })
  })

  it('a wait that lasts on while the clock runs in is no delay', () => {
    const facts = { ...overhaul, waits: [{ from: on(6), until: null }] }
    expect(turnRound(facts)).toMatchObject({ waiting: 9 * day, 'run-in': 14 * day, bench: 2 * day })
  })

  it('waits that overlap are counted once', () => {
    const facts = {
      ...overhaul,
      waits: [
        { from: on(6), until: on(10) },
        { from: on(8), until: on(12) },
      ],
    }
    expect(turnRound(facts).waiting).toBe(6 * day)
  })

  it('every millisecond belongs to one part: the parts add up to the whole time in the shop', () => {
    const ms = fc.integer({ min: -50 * day, max: 200 * day })
    const iso = (n: number) => new Date(Date.UTC(2027, 0, 1) + n).toISOString()
    const stretch = fc
      .tuple(ms, fc.option(fc.nat(100 * day)))
      .map(([from, length]) => ({ from: iso(from), until: length === null ? null : iso(from + length) }))
    const facts = fc
      .record({
        stay: fc.nat(150 * day),
        allowed: ms,
        ready: ms,
        waits: fc.array(stretch, { maxLength: 5 }),
        runIns: fc.array(stretch, { maxLength: 3 }),
      })
      .map(({ stay, allowed, ready, ...rest }) => ({
        takenInAt: iso(0),
        collectedAt: iso(stay),
        allowedAt: iso(allowed),
        readyAt: iso(ready),
        ...rest,
      }))
    fc.assert(
      fc.property(facts, one => {
        const parts = turnRound(one)
        const whole = Date.parse(one.collectedAt) - Date.parse(one.takenInAt)
        expect(turnRoundParts.reduce((sum, part) => sum + parts[part], 0)).toBe(whole)
        for (const part of turnRoundParts) expect(parts[part]).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it('means of several add up as well', () => {
    const quick = { ...overhaul, waits: [], allowedAt: on(1), readyAt: on(21), collectedAt: on(21) }
    const [row] = meanTurnRounds([
      { key: 'overhaul', facts: overhaul },
      { key: 'overhaul', facts: { ...quick, runIns: [{ from: on(7), until: on(21) }] } },
    ])
    expect(row).toEqual({
      key: 'overhaul',
      repairs: 2,
      days: { word: 1.5, bench: 6.5, waiting: 2, 'run-in': 14, 'to-collect': 1 },
      allDays: 25,
    })
  })
})
