import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hoursByWork } from '../../../core/labour/by-work.ts'
import { minutesOfHours } from '../../../core/labour/hours.ts'
import { totalMinutes } from '../../../core/labour/minutes.ts'
import { lineWorks, tasks } from '../../../core/vocabulary/work.ts'

const at = (hour: number, minute = 0) => new Date(Date.UTC(2027, 2, 1, hour, minute)).toISOString()
const entry = (task: (typeof tasks)[number], from: number, to: number) => ({
  task,
  startedAt: at(from),
  endedAt: at(to),
  struckReason: null as string | null,
})

describe('estimated against worked hours on one repair', () => {
  it('the tasks of the movement stand against the lines of the movement, the dial against the dial', () => {
    const lines = [
      { quantity: '5', work: 'overhaul' as const },
      { quantity: '1.5', work: 'dial-repair' as const },
      { quantity: '0.5', work: null },
    ]
    const entries = [
      entry('clean', 9, 11),
      entry('dial', 11, 12),
      entry('strip', 13, 14),
      entry('case', 15, 16),
    ]
    expect(hoursByWork(lines, entries, at(18))).toEqual([
      {
        work: 'movement',
        estimatedMinutes: 330,
        workedMinutes: 180,
        tasks: [
          { task: 'strip', minutes: 60 },
          { task: 'clean', minutes: 120 },
        ],
      },
      { work: 'case', estimatedMinutes: null, workedMinutes: 60, tasks: [{ task: 'case', minutes: 60 }] },
      { work: 'dial', estimatedMinutes: 90, workedMinutes: 60, tasks: [{ task: 'dial', minutes: 60 }] },
    ])
  })

  it('counts every minute that stands and every hour agreed exactly once', () => {
    const entries = fc.array(
      fc
        .record({ task: fc.constantFrom(...tasks), from: fc.nat(12), long: fc.nat(11), struck: fc.boolean() })
        .map(({ task, from, long, struck }) => ({
          ...entry(task, from, from + long),
          struckReason: struck ? 'Wrong clock' : null,
        })),
    )
    const line = fc.record({
      quantity: fc.nat(400).map(quarters => String(quarters / 4)),
      work: fc.constantFrom(null, ...lineWorks),
    })
    fc.assert(
      fc.property(fc.array(line), entries, (lines, worked) => {
        const rows = hoursByWork(lines, worked, at(23))
        expect(rows.reduce((sum, row) => sum + row.workedMinutes, 0)).toBe(totalMinutes(worked, at(23)))
        expect(rows.reduce((sum, row) => sum + (row.estimatedMinutes ?? 0), 0)).toBe(
          minutesOfHours(lines.map(({ quantity }) => quantity)),
        )
      }),
    )
  })
})
