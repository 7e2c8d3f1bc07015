import { describe, expect, it } from 'vitest'
import { inTodaysShape, type Steps, versionOf } from '../../../core/acts/versions.ts'

// An invented act whose input changed its shape twice.
const steps: Steps = {
  'bench.oil': [
    input => ({ ...input, where: 'pivots' }),
    ({ drops, ...input }) => ({ ...input, amount: String(drops) }),
  ],
}

describe('an act’s input', () => {
  it('is of version 1 until it first changes, and one more with each step', () => {
    expect([versionOf('bench.clean', steps), versionOf('bench.oil', steps)]).toEqual([1, 3])
  })

  it.each([
    [1, { drops: 2 }],
    [2, { drops: 2, where: 'pivots' }],
    [3, { amount: '2', where: 'pivots' }],
  ])('of version %i is brought to today’s shape by the steps it lacks', (version, input) => {
    expect(inTodaysShape('bench.oil', version, input, steps)).toEqual({ amount: '2', where: 'pivots' })
  })

  it.each([0, 4, 1.5, -1])('of version %d, which there is not, is not brought anywhere', version => {
    expect(inTodaysShape('bench.oil', version, {}, steps)).toBeUndefined()
  })
})
