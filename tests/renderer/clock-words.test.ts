import { expect, test } from 'vitest'
import { forms } from '../../core/vocabulary/clock.ts'
import { expectedBelongings } from '../../core/vocabulary/expected-belongings.ts'
import { belongings } from '../../core/vocabulary/intake.ts'
import { en } from '../../core/words/en/index.ts'
import { belongingWords, clockMarks, clockWords } from '../../renderer/clock-words.ts'

const clock = {
  form: 'longcase',
  trains: 2,
  duration: '8-day',
  dial: 'painted',
  maker: '',
  serial: '',
} as const

test('a clock is told in one line by its form, duration, trains and dial', () => {
  expect(clockWords(en, clock)).toBe('longcase clock, 8-day, two trains, painted dial')
})

test('a dial of no known kind is left out', () => {
  expect(clockWords(en, { ...clock, dial: 'other' })).toBe('longcase clock, 8-day, two trains')
})

test('maker and serial tell it from another, as far as they were read', () => {
  expect(clockMarks(en, { maker: 'Vessey', serial: '40221' })).toBe('Vessey, serial 40221')
  expect(clockMarks(en, { maker: '', serial: '' })).toBe('')
})

test('a belonging is told by its kind and place, its own description first, more than one with their count', () => {
  expect(belongingWords(en, { item: 'weight', position: 'left' })).toBe('weight, left')
  expect(belongingWords(en, { item: 'other', position: '', description: 'wall hook', count: 2 })).toBe(
    '2 × wall hook',
  )
})

test('a place is only expected of belongings that have places', () => {
  for (const form of Object.keys(forms) as (keyof typeof forms)[])
    for (const { item, position } of expectedBelongings(form))
      expect(position === '' || (belongings[item].places as readonly string[]).includes(position)).toBe(true)
})

test('tall-case weights are asked after left, centre and right', () => {
  const weights = expectedBelongings('longcase').filter(({ item }) => item === 'weight')
  expect(weights.map(({ position }) => position)).toEqual(['left', 'centre', 'right'])
})
