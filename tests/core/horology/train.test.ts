import { expect, test } from 'vitest'
import { pendulumLengthMm } from '../../../core/horology/pendulum.ts'
import { runningTime, train } from '../../../core/horology/train.ts'
import { must, refusals } from '../must.ts'

const londonGravity = 0.0254 * 39.1393 * Math.PI ** 2

// GO, trains: wheels from the centre, pinions, escape wheel, vibrations a minute, beats an hour, inches.
test.each([
  ['80-75', '10-10', 30, 60, 3600, 39.14],
  ['64-60', '8-8', 30, 60, 3600, 39.14],
  ['80-72', '8-8', 30, 90, 5400, 17.39],
  ['84-78', '8-8', 30, 102.4, 6142.5, 13.44],
  ['84-70', '7-7', 30, 120, 7200, 9.78],
  ['100-96', '10-10', 40, 128, 7680, 8.59],
  ['84-78', '7-7', 30, 133.7, 8022.9, 7.9],
  ['104-96', '8-8', 30, 156, 9360, 5.78],
  ['120-96', '9-8', 30, 160, 9600, 5.5],
  ['45-36-36', '6-6-6', 20, 180, 10800, 4.35],
])(
  'GO: %s over %s with %d teeth is %d a minute, %d an hour, about %d in',
  (wheels, pinions, escapeTeeth, perMinute, bph, inches) => {
    const counts = (text: string) => text.split('-').map(Number)
    const result = must(train({ wheels: counts(wheels), pinions: counts(pinions), escape: escapeTeeth }))
    expect(Number(result.bph.toFixed(1))).toBe(bph)
    expect(Number(result.beatsPerMinute.toFixed(1))).toBe(perMinute)
    expect(Math.abs(pendulumLengthMm(3600 / result.bph, londonGravity) / 25.4 - inches)).toBeLessThanOrEqual(
      0.03,
    )
  },
)

// Common practice: a torsion clock, and a balance of 18000.
test.each([
  [[96], [8], 20, 480],
  [[80, 75, 70], [10, 10, 7], 15, 18000],
])('common practice: %j over %j with %d teeth is %d an hour', (wheels, pinions, escapeTeeth, bph) => {
  expect(must(train({ wheels, pinions, escape: escapeTeeth })).bph).toBe(bph)
})

// BK p. 22 prints 8 minutes for a wheel of 64 over a pinion of 8; an hour divided by 64 ÷ 8 is 7.5 (a misprint).
test('a pinion of 8 driven by a wheel of 64 turns in 7.5 minutes', () => {
  expect(60 / must(runningTime({ wheels: [64], pinions: [8], turns: 1 })).hoursPerTurn).toBe(7.5)
})

// GO: duration = great wheel ÷ centre pinion × turns.
test.each([
  [[144], [8], 10, 18, 180, 7.5],
  [[96], [8], 16, 12, 192, 8],
  [[96, 4], [8, 1], 16, 48, 768, 32],
])(
  'GO: %j over %j for %d turns: %d h a turn, %d h, %d days',
  (wheels, pinions, turns, hoursPerTurn, hours, days) => {
    expect(must(runningTime({ wheels, pinions, turns }))).toEqual({ hoursPerTurn, hours, days })
  },
)

// Common practice: a torsion clock's barrel turns once in 1834.67 hours.
test('common practice: a torsion clock of 86/12, 64/12, 64/10, 60/8 goes 1834.67 h a turn', () => {
  const result = must(runningTime({ wheels: [86, 64, 64, 60], pinions: [12, 12, 10, 8], turns: 1 }))
  expect(Number(result.hoursPerTurn.toFixed(2))).toBe(1834.67)
})

test('no wheels, unequal pairs and teeth that are none are problems', () => {
  expect(refusals(train({ wheels: [], pinions: [], escape: 0 }))).toEqual([
    'number.outOfRange escape',
    'train.empty wheels',
  ])
  expect(refusals(train({ wheels: [80, 0.5], pinions: [-1], escape: 30 }))).toEqual([
    'number.notWhole wheels[1]',
    'number.outOfRange pinions[0]',
    'train.pairs pinions',
  ])
  const many = Array(13).fill(10)
  expect(refusals(train({ wheels: many, pinions: many, escape: 30 }))).toEqual(['train.tooLong wheels'])
  expect(refusals(runningTime({ wheels: [96], pinions: [8], turns: 0 }))).toEqual(['number.outOfRange turns'])
})
