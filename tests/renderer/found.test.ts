import { expect, test } from 'vitest'
import { en } from '../../core/words/en/index.ts'
import { type Found, foundWords, inOrder, placeOf } from '../../renderer/shell/found.ts'

const nothing: Found = {
  kind: 'owner',
  id: 1,
  number: null,
  name: null,
  form: null,
  maker: null,
  serial: null,
  stage: null,
  paperKind: null,
  address: null,
  contact: null,
}

test('a repair is opened by its number, everything else by its own', () => {
  expect(placeOf({ kind: 'repair', id: 9, number: '2207' })).toBe('/counter/2207')
  expect(placeOf({ kind: 'owner', id: 4, number: null })).toBe('/register/owner/4')
  expect(placeOf({ kind: 'clock', id: 5, number: null })).toBe('/register/clock/5')
  expect(placeOf({ kind: 'paper', id: 6, number: 'I0001' })).toBe('/accounts/paper/6')
})

test('an owner is told by name, the address on one line, and a contact', () => {
  const owner: Found = { ...nothing, name: 'Pell, Rosamund', address: '2 Chandler’s Row\nAnsty Quay' }
  const told = { lead: 'Pell, Rosamund', name: '', detail: '2 Chandler’s Row, Ansty Quay' }
  expect(foundWords(en, owner)).toEqual(told)
  expect(foundWords(en, { ...owner, contact: '+44 1632 960218' })).toEqual({
    ...told,
    detail: '2 Chandler’s Row, Ansty Quay · +44 1632 960218',
  })
})

test('a clock is told by what it is, and by whose', () => {
  const clock: Found = { ...nothing, kind: 'clock', name: 'Pell', form: 'wall', maker: 'P. Hask' }
  expect(foundWords(en, clock)).toEqual({ lead: 'wall clock, P. Hask', name: 'Pell', detail: '' })
})

test('a repair is told by its number and what tells its clock from another', () => {
  const repair: Found = {
    ...nothing,
    kind: 'repair',
    number: '2207',
    name: 'Pell',
    form: 'wall',
    serial: '99',
  }
  expect(foundWords(en, repair)).toEqual({ lead: '2207', name: 'Pell', detail: 'wall clock, 99' })
})

test('a paper is told by its number and its title', () => {
  const paper: Found = { ...nothing, kind: 'paper', number: 'I0001', name: 'Pell', paperKind: 'invoice' }
  expect(foundWords(en, paper)).toEqual({ lead: 'I0001', name: 'Pell', detail: 'Invoice' })
})

test('repairs stand before owners, clocks and papers, and among themselves as they were found', () => {
  const found = (['paper', 'owner', 'repair', 'clock', 'repair'] as const).map((kind, id) => ({
    ...nothing,
    kind,
    id,
  }))
  expect(inOrder(found).map(({ id }) => id)).toEqual([2, 4, 1, 3, 0])
})
