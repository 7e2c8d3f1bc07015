import { describe, expect, it } from 'vitest'
import { mainspring } from '../../../core/horology/mainspring.ts'
import { springsFor } from '../../../core/stores/mainspring-finder.ts'

const spring = (height: string, thickness: string, length: string, unit: 'mm' | 'in' = 'mm') => ({
  sizes: [
    { dimension: 'height' as const, value: height, unit },
    { dimension: 'thickness' as const, value: thickness, unit },
    { dimension: 'length' as const, value: length, unit },
  ],
})
const wanted = { barrelMm: 45, arborMm: 15, heightMm: 20, hoursPerTurn: 24, wantedDays: 7 }
const found = (parts: Parameters<typeof springsFor>[1], more = {}) => {
  const result = springsFor({ ...wanted, ...more }, parts)
  return result.ok ? result.value : result.problems.map(({ code, field }) => `${code} ${field}`)
}

describe('the mainspring finder', () => {
  // Trade reference §3: barrel 45, arbor 15, 0.45 thick: 1570.8 long by the half-area rule, 7.87 turns.
  it('gives a spring of the half-area length the turns of theory and half the room', () => {
    const [one] = found([spring('19', '0.45', '1570.8')]) as {
      turns: number
      fillPercent: number
      days: number
    }[]
    expect(one?.turns).toBeCloseTo(7.87, 2)
    expect(one?.fillPercent).toBeCloseTo(50, 2)
    expect(one?.days).toBeCloseTo(7.87, 2)
    const theory = mainspring({ barrelMm: 45, arborMm: 15, thicknessMm: 0.45 })
    expect(theory.ok && theory.value.turns).toBeCloseTo(one?.turns ?? 0, 3)
  })

  it('converts inches exactly, and leaves out what is too high, too long or not measured', () => {
    const inInches = spring('0.75', '0.018', '61', 'in')
    const parts = [inInches, spring('21', '0.45', '1570'), spring('19', '0.45', '4000'), { sizes: [] }]
    expect(found(parts)).toMatchObject([{ part: inInches }])
  })

  it('puts the springs that run long enough first, then those nearest to half the room', () => {
    const [short, long, thick] = [
      spring('19', '0.45', '700'),
      spring('19', '0.4', '1700'),
      spring('19', '0.45', '1570'),
    ]
    const order = found([short, long, thick]) as { part: unknown; longEnough: boolean }[]
    expect(order.map(({ part }) => [short, long, thick].indexOf(part as typeof short))).toEqual([2, 1, 0])
    expect(order.map(({ longEnough }) => longEnough)).toEqual([true, true, false])
  })

  it('names what cannot be', () => {
    expect(found([], { arborMm: 45 })).toEqual(['mainspring.arbor arborMm'])
    expect(found([], { barrelMm: Number.NaN, wantedDays: 0 })).toHaveLength(2)
  })
})
