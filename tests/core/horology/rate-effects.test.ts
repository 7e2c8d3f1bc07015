import { expect, test } from 'vitest'
import {
  circularErrorTheory,
  lossPerDegree,
  lossPerMetre,
  type RodMaterial,
  rateOfShortening,
  ratePerNutTurn,
  trialBph,
} from '../../../core/horology/rate-effects.ts'

const inch = 25.4
const secondsPendulumMm = 39.14 * inch

// BK p. 34–35: 5400 a² with a the semi-arc in radians; values calculated.
test.each([
  [1, 1.645, 3],
  [2, 6.58, 3],
  [3, 14.8, 2],
  [4, 26.32, 2],
  [5, 41.12, 2],
  [10, 164.5, 1],
])('theory: a semi-arc of %d° loses %d s a day', (degrees, seconds, places) => {
  expect(Number(circularErrorTheory(degrees).toFixed(places))).toBe(seconds)
})

// Calculated, 43200 α; the reference rounds α and the product.
test.each<[RodMaterial, number]>([
  ['steel', 0.498],
  ['iron', 0.544],
  ['brass', 0.778],
  ['deal', 0.179],
])('a %s rod loses %d s a day for each °C', (rod, seconds) => {
  expect(Math.abs(lossPerDegree(rod) - seconds)).toBeLessThanOrEqual(0.002)
})

// BK p. 52, from 40 to 70 °F (16.7 °C): iron wire a minute a week, brass a minute in 5 days, wood a minute in 3 weeks.
test.each<[RodMaterial, number]>([
  ['iron', 7],
  ['brass', 5],
  ['deal', 21],
])('BK p. 52: from 40 to 70 °F a %s rod loses about a minute in %d days', (rod, days) => {
  const lost = lossPerDegree(rod) * (30 / 1.8) * days
  expect(Math.abs(lost - 60)).toBeLessThanOrEqual(6)
})

// BK p. 50: an 18th of an inch of thread on a seconds pendulum is a minute a day (calculated 61.3).
test('BK p. 50: one turn of an 18-thread nut on a seconds pendulum is a minute a day', () => {
  expect(Number(ratePerNutTurn(inch / 18, secondsPendulumMm).toFixed(1))).toBe(61.3)
})

// BK, GO: 36 threads an inch are 30 s a turn (calculated 30.7).
test('BK, GO: one turn of a 36-thread nut is half a minute a day', () => {
  expect(Number(ratePerNutTurn(inch / 36, secondsPendulumMm).toFixed(1))).toBe(30.7)
})

// EB 11th ed., "Clock": 1 s a day is 0.000906 in on a seconds pendulum.
test('EB: 0.000906 in of a seconds pendulum is a second a day', () => {
  expect(rateOfShortening(0.000906 * inch, secondsPendulumMm)).toBeCloseTo(1, 2)
})

// Free air, calculated: 0.0136 s a day for each metre.
test('a metre of height loses 0.0136 s a day', () => {
  expect(Number(lossPerMetre().toFixed(4))).toBe(0.0136)
})

// Common practice (trade reference §5): 1000 × 721 ÷ 732.
test('common practice: a trial that shows 732 while 721 pass asks for 984.97 of 1000', () => {
  expect(Number(trialBph(1000, 721, 732).toFixed(2))).toBe(984.97)
})
