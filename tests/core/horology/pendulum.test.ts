import { expect, test } from 'vitest'
import { gravityAt, normalGravity, standardGravity } from '../../../core/horology/gravity.ts'
import { beatSeconds, pendulum, pendulumLengthMm } from '../../../core/horology/pendulum.ts'
import { must, refusals } from '../must.ts'

const inch = 25.4

/** g by which a seconds pendulum has so many inches: L = g ÷ π². */
const gravityOfInches = (inches: number) => (inches * inch * Math.PI ** 2) / 1000

/** Rounds as a table prints it. */
const printed = (value: number, places: number) => Number(value.toFixed(places))

// BK p. 36: seconds per beat → length; its seconds pendulum is 39.14 in. Printed to the half inch, inch or hundredth.
test.each([
  [2, 13 * 12 + 0.5, 0.1],
  [1.5, 7 * 12 + 4, 0.1],
  [1, 39.14, 0.005],
  [3 / 4, 22, 0.05],
  [2 / 3, 17.4, 0.05],
  [1 / 2, 9.78, 0.01],
])('BK p. 36: a beat of %d s takes %d in', (beat, inches, within) => {
  const found = pendulumLengthMm(beat, gravityOfInches(39.14)) / inch
  expect(Math.abs(found - inches)).toBeLessThanOrEqual(within)
})

// BK p. 40 prints 0.846 s for 36 in; the formula gives 0.959 (a misprint, kept here so that nobody copies it).
test('36 in beat 0.959 s', () => {
  expect(printed(beatSeconds(36 * inch, gravityOfInches(39.14)), 3)).toBe(0.959)
})

// GO: vibrations a minute → inches, London g, 39.1393 in. The printed table strays from its own formula by up to
// two hundredths.
test.each([
  [60, 39.14],
  [68, 30.49],
  [72, 27.17],
  [80, 22.01],
  [90, 17.39],
  [100, 14.09],
  [110, 11.64],
  [120, 9.78],
  [130, 8.34],
  [150, 6.26],
  [160, 5.5],
  [180, 4.35],
])('GO: %d vibrations a minute take %d in at London', (perMinute, inches) => {
  const found = pendulumLengthMm(60 / perMinute, gravityOfInches(39.1393)) / inch
  expect(Math.abs(found - inches)).toBeLessThanOrEqual(0.02)
})

// Calculated at standard gravity (trade reference §1).
test.each([
  [3600, 993.62],
  [4800, 558.91],
  [5400, 441.61],
  [6000, 357.7],
  [7200, 248.41],
  [7800, 211.66],
  [9000, 158.98],
  [9600, 139.73],
  [10800, 110.4],
])('%d beats an hour take %d mm at standard gravity', (bph, lengthMm) => {
  const result = must(pendulum({ bph, g: standardGravity }))
  expect(printed(result.lengthMm, 2)).toBe(lengthMm)
  expect(result.gSource).toBe('standard')
})

// GO (Gourdin), about Paris g, 993.9 mm. Rows 16000, 8600, 5400 and 3700 are misprinted there and left out.
test.each([
  [3600, 993.9],
  [6000, 357.8],
  [7200, 248.5],
  [7800, 211.7],
  [8000, 201.3],
  [9000, 159.0],
  [9600, 139.8],
  [10800, 110.5],
  [12000, 89.5],
  [14400, 62.1],
  [18000, 39.8],
])('GO (Gourdin): %d beats an hour take %d mm at Paris', (bph, lengthMm) => {
  const { lengthMm: found } = must(pendulum({ bph, g: 0.9939 * Math.PI ** 2 }))
  expect(Math.abs(found - lengthMm)).toBeLessThanOrEqual(0.1)
})

// WGS84, NGA/NIMA TR8350.2: normal gravity at the pole.
test('WGS84: gravity at equator and pole are the published ones', () => {
  expect(normalGravity(0)).toBe(9.7803253359)
  expect(normalGravity(90)).toBeCloseTo(9.8321849378, 8)
  expect(normalGravity(-90)).toBe(normalGravity(90))
})

// GRS80, Moritz 1980: 9.7803267715 at the equator, 9.8321863685 at the pole.
test('GRS80: gravity at equator and pole are the published ones', () => {
  expect(normalGravity(0, 'GRS80')).toBe(9.7803267715)
  expect(normalGravity(90, 'GRS80')).toBeCloseTo(9.8321863685, 8)
})

// Calculated, WGS84 (trade reference §1).
test.each([
  [0, 990.954],
  [30, 992.263],
  [45, 993.576],
  [51.4779, 994.165],
  [60, 994.891],
  [90, 996.209],
])('the seconds pendulum at %d° is %d mm', (latitude, lengthMm) => {
  expect(printed(must(pendulum({ bph: 3600, latitude })).lengthMm, 3)).toBe(lengthMm)
})

// GO: seconds pendulums in inches at named latitudes; normal gravity comes within two hundredths, local gravity apart.
test.each([
  ['equator', 0, 39.0],
  ['New York', 40.7, 39.1012],
  ['Paris', 48.9, 39.13],
  ['London', 51.5, 39.14],
  ['Edinburgh', 55.9, 39.15],
  ['pole', 90, 39.206],
])('GO: the seconds pendulum at %s (%d°) is about %d in', (_place, latitude, inches) => {
  expect(Math.abs(must(pendulum({ bph: 3600, latitude })).lengthMm / inch - inches)).toBeLessThanOrEqual(0.02)
})

// BK p. 39: an English pendulum loses 2¼ minutes a day at the equator.
test('BK p. 39: an English pendulum loses about 2¼ minutes a day at the equator', () => {
  const length = must(pendulum({ bph: 3600, latitude: 51.5 })).lengthMm
  const lost = 86_400 * (1 - 1 / beatSeconds(length, normalGravity(0)))
  expect(lost / 60).toBeGreaterThan(2.2)
  expect(lost / 60).toBeLessThan(2.4)
})

test('height lowers gravity, and the source of g is always told', () => {
  expect(must(pendulum({ bph: 3600, latitude: 45 })).gSource).toBe('latitude')
  const high = must(pendulum({ bph: 3600, latitude: 45, heightMetres: 1000 }))
  expect([high.gSource, high.g]).toEqual(['latitude and height', gravityAt(45, 1000)])
  expect(must(pendulum({ lengthMm: 250, g: 9.81 })).gSource).toBe('given')
})

test('length to beats and back comes to the same', () => {
  const { bph, beatSeconds: beat } = must(pendulum({ lengthMm: 250, g: 9.81 }))
  expect(must(pendulum({ bph, g: 9.81 })).lengthMm).toBeCloseTo(250, 10)
  expect(beat * bph).toBeCloseTo(3600, 9)
})

test('both or neither of a pair, a height alone and figures out of range are problems', () => {
  expect(refusals(pendulum({}))).toEqual(['pendulum.oneOf bph', 'pendulum.oneOf g'])
  expect(refusals(pendulum({ bph: 3600, lengthMm: 1, g: 9.8, latitude: 1 }))).toEqual([
    'pendulum.oneOf bph',
    'pendulum.oneOf g',
  ])
  expect(refusals(pendulum({ bph: 0, g: Number.NaN, heightMetres: 20_000 }))).toEqual([
    'number.outOfRange bph',
    'number.outOfRange g',
    'number.outOfRange heightMetres',
    'pendulum.heightAlone heightMetres',
  ])
  expect(refusals(pendulum({ lengthMm: -5, latitude: 91 }))).toEqual([
    'number.outOfRange latitude',
    'number.outOfRange lengthMm',
  ])
})
