import { describe, expect, it } from 'vitest'
import { saysAll, whereabouts, whereBelongingIs, whereClockIs } from '../../../core/custody/custody.ts'
import { type Stage, stages } from '../../../core/standing/stages.ts'

describe('custody', () => {
  it('a clock is where its repair stands, and with its owner once it is collected', () => {
    const where = Object.fromEntries(
      (Object.keys(stages) as Stage[]).map(stage => [stage, whereClockIs(stage)]),
    )
    expect(where).toEqual({
      'taken-in': 'counter',
      'estimate-out': 'counter',
      'go-ahead': 'bench',
      'on-the-bench': 'bench',
      waiting: 'bench',
      'running-in': 'shelf',
      ready: 'counter',
      declined: 'counter',
      collected: 'owner',
    })
  })

  it('is read from the counter to the owner', () => {
    expect(whereabouts).toEqual(['counter', 'bench', 'shelf', 'by-tag', 'vendor', 'owner'])
  })

  it('a part that was received is put by under its tag until it is given back; what never was is nowhere', () => {
    expect(whereBelongingIs('received', null)).toBe('by-tag')
    expect(whereBelongingIs('received', '2027-03-01T09:00:00.000Z')).toBe('owner')
    expect(whereBelongingIs('kept', null)).toBe('owner')
    expect(whereBelongingIs('absent', null)).toBe(null)
  })

  it('the search wants every word typed, in any order, capitals and accents apart', () => {
    const line = '2203 weight, left · Inés Núñez · 2203-B'
    for (const typed of ['', ' ', 'nunez', 'NÚÑEZ weight', 'left 2203', '2203-b'])
      expect(saysAll(line, typed), typed).toBe(true)
    expect(saysAll(line, 'weight right')).toBe(false)
  })
})
