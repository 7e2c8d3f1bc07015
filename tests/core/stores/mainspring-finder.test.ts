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

  const order = (parts: Parameters<typeof springsFor>[1], more = {}) =>
    (found(parts, more) as { part: unknown }[]).map(({ part }) =>
      parts.indexOf(part as (typeof parts)[number]),
    )

  it('puts a usual fill and a run that is long enough before nearness to half the room', () => {
    const [short, long, thick] = [
      spring('19', '0.45', '700'),
      spring('19', '0.4', '1700'),
      spring('19', '0.45', '1570'),
    ]
    expect(order([short, long, thick])).toEqual([2, 1, 0])
  })

  it('puts the spring as strong as the old one first, whose strength goes with height × thickness³ ÷ length', () => {
    const old = { height: 19, thickness: 0.45, length: 1570 }
    const [weak, right] = [spring('19', '0.32', '2208'), spring('19', '0.46', '1500')]
    expect(order([weak, right], { old })).toEqual([1, 0])
    const [one] = found([spring('19', '0.45', '1570')], { old }) as { strengthPercent: number }[]
    expect(one?.strengthPercent).toBeCloseTo(100, 9)
    const [double] = found([spring('19', '0.45', '1570')], { old: { ...old, height: 9.5 } }) as {
      strengthPercent: number
    }[]
    expect(double?.strengthPercent).toBeCloseTo(200, 9)
  })

  it('says of a spring half a day short that it is, and does not put it behind one of a third of the strength', () => {
    const old = { height: 19, thickness: 0.45, length: 1400 }
    const [right, weak] = [spring('19', '0.45', '1400'), spring('19', '0.31', '2300')]
    expect(order([weak, right], { old, wantedDays: 8 })).toEqual([1, 0])
    expect(found([right], { old, wantedDays: 8 })).toMatchObject([{ longEnough: false }])
  })

  it('puts a spring on record for this very barrel before all others', () => {
    const other = spring('19', '0.45', '1570')
    const own = {
      sizes: [
        ...spring('19', '0.42', '1500').sizes,
        { dimension: 'barrel' as const, value: '45.4', unit: 'mm' as const },
      ],
    }
    expect(order([other, own])).toEqual([1, 0])
    const near = {
      sizes: [...own.sizes.slice(0, 3), { dimension: 'barrel' as const, value: '45.6', unit: 'mm' as const }],
    }
    expect(order([near, other])).toEqual([1, 0])
  })

  it('names what cannot be', () => {
    expect(found([], { arborMm: 45 })).toEqual(['mainspring.arbor arborMm'])
    expect(found([], { barrelMm: Number.NaN, wantedDays: 0 })).toHaveLength(2)
    expect(found([], { old: { height: 19, thickness: 0, length: 1570 } })).toEqual([
      'number.outOfRange old.thickness',
    ])
  })
})
