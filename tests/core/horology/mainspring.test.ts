import { expect, test } from 'vitest'
import { mainspring, runDownRingMm } from '../../../core/horology/mainspring.ts'
import { must, refusals } from '../must.ts'

// Half-area rule (common practice); turns calculated from the geometry (trade reference §3).
test.each([
  [45, 15, 0.45, 1570.8, 7.87],
  [36, 12, 0.4, 1131.0, 7.08],
  [21.3, 7.1, 0.254, 623.5, 6.6],
  [9, 3, 0.1, 282.7, 7.08],
])(
  'a barrel of %d mm with an arbor of %d and a spring of %d holds %d mm and %d turns',
  (barrelMm, arborMm, thicknessMm, lengthMm, turns) => {
    const result = must(mainspring({ barrelMm, arborMm, thicknessMm }))
    expect(Number(result.lengthMm.toFixed(1))).toBeCloseTo(lengthMm, 1)
    expect(Number(result.turns.toFixed(2))).toBe(turns)
  },
)

test('the spring fills half the room between arbor and wall', () => {
  const { lengthMm } = must(mainspring({ barrelMm: 45, arborMm: 15, thicknessMm: 0.45 }))
  expect(lengthMm * 0.45).toBeCloseTo(((Math.PI / 4) * (45 ** 2 - 15 ** 2)) / 2, 9)
})

// GO: about an eighth; calculated 0.1273 of the barrel where the arbor is a third of it.
test('GO: the ring of a run-down spring is about an eighth of the barrel', () => {
  expect(Number(runDownRingMm(1, 1 / 3).toFixed(4))).toBe(0.1273)
})

test('an arbor as wide as the barrel, a spring that leaves no coil and figures that are none are problems', () => {
  expect(refusals(mainspring({ barrelMm: 15, arborMm: 15, thicknessMm: 0.4 }))).toContain(
    'mainspring.arbor arborMm',
  )
  expect(refusals(mainspring({ barrelMm: 15, arborMm: 5, thicknessMm: 2.5 }))).toEqual([
    'mainspring.thickness thicknessMm',
  ])
  expect(refusals(mainspring({ barrelMm: 0, arborMm: Number.NaN, thicknessMm: -1 }))).toEqual([
    'number.outOfRange arborMm',
    'number.outOfRange barrelMm',
    'number.outOfRange thicknessMm',
  ])
})
