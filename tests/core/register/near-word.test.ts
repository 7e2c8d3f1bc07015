import fc from 'fast-check'
import { expect, it } from 'vitest'
import { isOneSlipAway, mayBegin } from '../../../core/register/near-word.ts'

it.each([
  ['hartmen', 'hartman'],
  ['hartmn', 'hartman'],
  ['harttman', 'hartman'],
  ['hatrman', 'hartman'],
  ['hartma', 'hartman'],
  ['artman', 'hartman'],
])('%s is one slip away from %s', (one, other) => {
  expect(isOneSlipAway(one, other)).toBe(true)
  expect(isOneSlipAway(other, one)).toBe(true)
})

it.each([
  ['hertmen', 'hartman'],
  ['hart', 'hartman'],
  ['namtrah', 'hartman'],
])('%s is more than one slip away from %s', (one, other) => {
  expect(isOneSlipAway(one, other)).toBe(false)
})

it('any one letter changed, left out or put in is one slip', () => {
  const word = fc.string({ unit: fc.constantFrom(...'abcdef'), minLength: 1, maxLength: 12 })
  fc.assert(
    fc.property(word, fc.nat(11), fc.constantFrom(...'abcdef'), (text, at, letter) => {
      const i = at % text.length
      expect(isOneSlipAway(text, text.slice(0, i) + letter + text.slice(i + 1))).toBe(true)
      expect(isOneSlipAway(text, text.slice(0, i) + text.slice(i + 1))).toBe(true)
      expect(isOneSlipAway(text, text.slice(0, i) + letter + text.slice(i))).toBe(true)
    }),
  )
})

it('what is typed so far may begin a word with one slip in it, from four letters on', () => {
  expect(mayBegin('hertm', 'hartmann')).toBe(true)
  expect(mayBegin('hera', 'hartmann')).toBe(false)
  expect(mayBegin('her', 'hartmann')).toBe(false)
  expect(mayBegin('xart', 'hartmann')).toBe(true)
})
