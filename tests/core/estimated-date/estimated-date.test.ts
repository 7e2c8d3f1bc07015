import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type EstimatedDateInput, estimatedDate } from '../../../core/estimated-date/estimated-date.ts'
import { runInDefaults } from '../../../core/run-in/policy.ts'
import { must } from '../must.ts'

// The week and holidays of the work calendar's published checks: Monday to Friday with a break at noon.
const week = [1, 2, 3, 4, 5].flatMap(day => [
  { day, from: '09:00', to: '12:30' },
  { day, from: '13:00', to: '17:00' },
])
const plain: EstimatedDateInput = {
  week,
  holidays: ['2026-12-25', '2026-12-28', '2027-01-01'],
  now: '2027-03-01T09:00',
  aheadMinutes: 0,
  ownMinutes: 450,
  benches: 1,
  dueBack: null,
  runIn: null,
}
const reckoned = (more: Partial<EstimatedDateInput>) => must(estimatedDate({ ...plain, ...more }))

describe('an estimated date', () => {
  it('is the day the bench work is done where no run-in follows', () => {
    expect(reckoned({})).toEqual({
      readyOn: '2027-03-01',
      parts: [{ part: 'bench', from: '2027-03-01T09:00', to: '2027-03-01T17:00' }],
    })
  })

  it('comes after the queue ahead, which the benches share', () => {
    expect(reckoned({ aheadMinutes: 900 }).readyOn).toBe('2027-03-03')
    expect(reckoned({ aheadMinutes: 900, benches: 2 }).readyOn).toBe('2027-03-02')
  })

  it('waits until what is away is due back', () => {
    const { parts, readyOn } = reckoned({ dueBack: '2027-03-06' })
    expect(readyOn).toBe('2027-03-08')
    expect(parts.map(({ part }) => part)).toEqual(['waiting', 'bench'])
  })

  it('shows the weeks of the test apart from the bench', () => {
    const { policy } = runInDefaults['8-day']
    const { parts, readyOn } = reckoned({ runIn: { duration: '8-day', trains: 2, policy } })
    // Set going at closing time on the 1st, fourteen days end at closing time on the 15th: the next open minute is the 16th's.
    expect(readyOn).toBe('2027-03-16')
    expect(parts.map(({ part }) => part)).toEqual(['bench', 'running-in'])
  })

  it('never grows earlier when more lies ahead, and its parts follow one another', () => {
    const minutes = fc.integer({ min: 0, max: 20_000 })
    fc.assert(
      fc.property(minutes, minutes, minutes, (ahead, more, own) => {
        const now = reckoned({ aheadMinutes: ahead, ownMinutes: own })
        const later = reckoned({ aheadMinutes: ahead + more, ownMinutes: own })
        expect(later.readyOn >= now.readyOn).toBe(true)
        for (const [i, part] of now.parts.entries())
          if (i > 0) expect(part.from >= (now.parts[i - 1]?.to ?? '')).toBe(true)
      }),
      { numRuns: 60 },
    )
  })

  it('is refused for no bench, half minutes and a shop that never opens', () => {
    const code = (more: Partial<EstimatedDateInput>) => {
      const result = estimatedDate({ ...plain, ...more })
      return result.ok ? null : result.problems[0]?.code
    }
    expect(code({ benches: 0 })).toBe('estimatedDate.benches')
    expect(code({ ownMinutes: 1.5 })).toBe('estimatedDate.minutes')
    expect(code({ week: [] })).toBe('calendar.closedAllWeek')
  })
})
