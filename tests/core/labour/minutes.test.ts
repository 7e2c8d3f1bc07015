import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { instantOf } from '../../../core/calendar/zone.ts'
import { isForgotten } from '../../../core/labour/forgotten.ts'
import { minutesOfHours } from '../../../core/labour/hours.ts'
import { labourMinutes, totalMinutes } from '../../../core/labour/minutes.ts'

const london = 'Europe/London'
const at = (local: string) => instantOf(local, london)

describe('labour minutes', () => {
  it('run through midnight', () => {
    expect(labourMinutes(at('2027-03-02T23:30'), at('2027-03-03T00:45'))).toBe(75)
  })

  // EU Directive 2000/84/EC as kept in UK law: clocks forward on 28 March, back on 31 October 2027 at 01:00 UTC.
  it('are what really passed when the clocks go forward and back', () => {
    expect(labourMinutes(at('2027-03-28T00:30'), at('2027-03-28T02:30'))).toBe(60)
    expect(labourMinutes(at('2027-10-31T00:30'), at('2027-10-31T02:30'))).toBe(180)
  })

  it('of stretches that meet add up to exactly those of the whole, wherever it is cut', () => {
    const start = Date.parse('2027-03-27T00:00:00.000Z')
    const moment = fc.integer({ min: 0, max: 3 * 86_400_000 }).map(ms => new Date(start + ms).toISOString())
    fc.assert(
      fc.property(fc.array(moment, { minLength: 2, maxLength: 20 }), moments => {
        const cuts = [...moments].sort()
        const entries = cuts
          .slice(1)
          .map((endedAt, i) => ({ startedAt: cuts[i] ?? endedAt, endedAt, struckReason: null }))
        const [first = '', last = ''] = [cuts[0], cuts.at(-1)]
        expect(totalMinutes(entries, last)).toBe(labourMinutes(first, last))
      }),
    )
  })

  it('of a struck entry count nothing, of a running one up to now', () => {
    const startedAt = at('2027-03-02T09:00')
    const now = at('2027-03-02T09:30')
    expect(totalMinutes([{ startedAt, endedAt: null, struckReason: null }], now)).toBe(30)
    expect(totalMinutes([{ startedAt, endedAt: null, struckReason: 'wrong repair' }], now)).toBe(0)
  })

  it('a clock still running on another day than it was started is forgotten', () => {
    const entry = { startedAt: at('2027-03-02T16:50'), endedAt: null, struckReason: null }
    expect(isForgotten(entry, at('2027-03-02T23:59'), london)).toBe(false)
    expect(isForgotten(entry, at('2027-03-03T08:00'), london)).toBe(true)
  })

  it('hours typed as decimals are summed exactly before they are rounded to minutes', () => {
    expect(minutesOfHours(['0.1', '0.2', '1.25'])).toBe(93)
    expect(minutesOfHours([])).toBe(0)
    expect(minutesOfHours(Array.from({ length: 60 }, () => '0.008'))).toBe(29)
  })
})
