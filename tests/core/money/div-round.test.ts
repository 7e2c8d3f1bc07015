import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { divRound, type RoundingMode } from '../../../core/money/div-round.ts'

const oracleModes: Record<RoundingMode, Decimal.Rounding> = {
  'half-up': Decimal.ROUND_HALF_UP,
  'half-even': Decimal.ROUND_HALF_EVEN,
  down: Decimal.ROUND_DOWN,
}
const Exact = Decimal.clone({ precision: 120 })

test.each([
  ['half-up', 5n, 2n, 3n],
  ['half-up', -5n, 2n, -3n],
  ['half-up', 5n, -2n, -3n],
  ['half-even', 5n, 2n, 2n],
  ['half-even', 7n, 2n, 4n],
  ['half-even', -5n, 2n, -2n],
  ['down', 29n, 10n, 2n],
  ['down', -29n, 10n, -2n],
] as const)('%s rounds %d ÷ %d to %d', (mode, n, d, expected) => {
  expect(divRound(n, d, mode)).toBe(expected)
})

test('every mode agrees with an independent decimal library', () => {
  const integer = fc.bigInt({ min: -(2n ** 80n), max: 2n ** 80n })
  fc.assert(
    fc.property(
      integer,
      integer,
      fc.constantFrom<RoundingMode>('half-up', 'half-even', 'down'),
      (n, d, mode) => {
        fc.pre(d !== 0n)
        const quotient = new Exact(n.toString()).div(d.toString())
        expect(divRound(n, d, mode).toString()).toBe(
          quotient.toDecimalPlaces(0, oracleModes[mode]).toFixed().replace(/^-0$/, '0'),
        )
      },
    ),
  )
})

test('halves agree with an independent decimal library', () => {
  fc.assert(
    fc.property(
      fc.bigInt({ min: -(10n ** 20n), max: 10n ** 20n }),
      fc.constantFrom<RoundingMode>('half-up', 'half-even', 'down'),
      (n, mode) => {
        const half = new Exact(n.toString()).div(2)
        expect(divRound(n, 2n, mode).toString()).toBe(
          half.toDecimalPlaces(0, oracleModes[mode]).toFixed().replace(/^-0$/, '0'),
        )
      },
    ),
  )
})

test('division by zero is a bug and throws', () => {
  expect(() => divRound(1n, 0n, 'down')).toThrow(new RangeError('division by zero'))
})
