import { describe, expect, it } from 'vitest'
import { shelfVerdict } from '../../../core/run-in/verdict.ts'
import { bad, good, simulated, type Truth } from './shelf-simulator.ts'

/** Seeds of each kind of truth; `npm run bench -- shelf` tries many more. */
const seeds = 100

const verdictsOf = (truth: Truth) =>
  Array.from({ length: seeds }, (_, seed) => {
    const { input } = simulated(seed + 1, truth)
    return { input, ...shelfVerdict(input) }
  })

/** Why a clock that is truly so may not pass: one of these is named each time. */
const reasons: Readonly<Record<(typeof bad)[number], readonly string[]>> = {
  'far off': ['rate'],
  drifting: ['steadiness'],
  'alternating by the day': ['steadiness'],
  'alternating by the wind': ['steadiness', 'rate'],
  stops: ['days'],
  'stops at night and goes on': ['steadiness'],
  'hands moved by somebody': ['steadiness'],
  'strikes one hour wrong': ['hours-struck'],
  'chimes one quarter wrong': ['quarters'],
  'does not correct itself': ['self-correction'],
  'out of beat in its case': ['beat-in-case'],
  'not read for a week': ['gap', 'days'],
  'never cased': ['beat-in-case'],
  'never heard': ['hours-struck', 'quarters'],
}

describe('of clocks on simulated shelves, read as the usual policy asks', () => {
  it.each(bad)('none passes that is “%s”, and the reason is named', truth => {
    for (const { verdict, toShow } of verdictsOf(truth)) {
      expect(verdict).not.toBe('may-pass')
      expect(toShow.some(({ code }) => reasons[truth].includes(code))).toBe(true)
    }
  })

  it.each(bad)('none that is “%s” passes on any day before', truth => {
    for (const { input } of verdictsOf(truth).slice(0, 20))
      for (let read = 1; read < input.readings.length; read++) {
        const readings = input.readings.slice(0, read)
        const now = readings.at(-1)?.at ?? input.now
        expect(shelfVerdict({ ...input, readings, now }).verdict).not.toBe('may-pass')
      }
  })

  it('at most three in a hundred that go well are held longer than the policy asks', () => {
    const held = good.flatMap(verdictsOf).filter(({ verdict }) => verdict !== 'may-pass')
    expect(held.length).toBeLessThanOrEqual(0.03 * seeds * good.length)
  })

  it('a clock that stops is told to begin again, one that is steadily far off to be regulated', () => {
    expect(verdictsOf('stops').every(({ verdict }) => verdict === 'begin-again')).toBe(true)
    expect(verdictsOf('far off').every(({ verdict }) => verdict === 'regulate')).toBe(true)
  })
})
