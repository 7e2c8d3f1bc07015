import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { typedError } from '../../../core/rate/typed-error.ts'

const noon = 12 * 3_600_000
const seconds = (text: string, localMs = noon) => {
  const typed = typedError(text, 'error', localMs)
  return typed.ok ? typed.value / 1000 : typed.problems[0]?.code
}

describe('an error as it is typed', () => {
  it.each([
    ['-63', -63],
    ['−63', -63],
    ['+5', 5],
    ['0', 0],
    ['2.5', 2.5],
    ['+0:02', 2],
    ['2:10', 130],
    ['+2:10', 130],
    ['-0:05', -5],
    ['+1:02:10', 3730],
    ['90:00', 5400],
    ['0:01.250', 1.25],
    [' + 0:02 ', 2],
  ])('%s is %d seconds', (text, expected) => expect(seconds(text)).toBe(expected))

  it.each(['', 'fast', '1:60', '1:2', '--3', '1e3', '2:10:', '12:99', '0.0001', '=25:00', '=10:60', ':30'])(
    '“%s” is refused',
    text => expect(seconds(text)).toBe('reading.notAnError'),
  )

  it('a dial time is compared with the true time, the nearer way round twelve hours', () => {
    expect(seconds('=12:00:05')).toBe(5)
    expect(seconds('=11:59')).toBe(-60)
    expect(seconds('=0:10')).toBe(600)
    expect(seconds('=11:58', 23 * 3_600_000 + 59 * 60_000)).toBe(-60)
  })

  it('every whole second within a week comes back from its minutes and seconds', () => {
    fc.assert(
      fc.property(fc.integer({ min: -604_800, max: 604_800 }), total => {
        const size = Math.abs(total)
        const text = `${total < 0 ? '-' : '+'}${Math.floor(size / 60)}:${String(size % 60).padStart(2, '0')}`
        expect(seconds(text)).toBe(total)
      }),
    )
  })
})
