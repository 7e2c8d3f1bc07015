import { expect, it } from 'vitest'
import { actingPerson } from '../../renderer/acting.ts'

const ines = { id: 1, name: 'Ines Marrow', active: true }
const tobias = { id: 2, name: 'Tobias Vane', active: true }

it('lets the chosen person act while they work here', () => {
  expect(actingPerson([ines, tobias], '2')).toBe('2')
})

it('takes nobody for granted where there are several, and the only one where there is one', () => {
  expect(actingPerson([ines, tobias], '')).toBe('')
  expect(actingPerson([ines], '')).toBe('1')
})

it('forgets a person who left or is of another ledger', () => {
  expect(actingPerson([ines, { ...tobias, active: false }], '2')).toBe('1')
  expect(actingPerson([ines, tobias], '7')).toBe('')
})
