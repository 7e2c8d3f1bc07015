import { describe, expect, it, test } from 'vitest'
import { benchHoursProblems } from '../../../core/people/bench-hours.ts'
import { initialsOf, shownInitials } from '../../../core/people/initials.ts'
import { hasOwner, inOrder } from '../../../core/people/roles.ts'

describe('initials', () => {
  it.each([
    ['Ines Marrow', 'IM'],
    ['Ines van der Marrow', 'IM'],
    ['ines', 'I'],
    ['  Żaneta   öström ', 'ŻÖ'],
    ['', ''],
  ])('of “%s” are %s', (name, initials) => expect(initialsOf(name)).toBe(initials))

  it('that were entered are shown in place of those of the name', () => {
    expect(shownInitials({ name: 'Ines Marrow', initials: 'Im' })).toBe('Im')
    expect(shownInitials({ name: 'Ines Marrow', initials: '' })).toBe('IM')
  })
})

test('roles stand once and in one order, however they were ticked', () => {
  expect(inOrder(['counter', 'owner', 'counter'])).toEqual(['owner', 'counter'])
})

describe('a shop has an owner', () => {
  it('while one of those who work there is one', () => {
    expect(hasOwner([{ active: true, roles: ['bench', 'owner'] }])).toBe(true)
    expect(hasOwner([{ active: false, roles: ['owner'] }])).toBe(false)
    expect(hasOwner([{ active: true, roles: ['bench', 'counter'] }])).toBe(false)
    expect(hasOwner([])).toBe(false)
  })
})

test('bench hours are those of a week: none, some, all 168, never more, never fewer than none', () => {
  for (const hours of ['', '0', '37.5', '168']) expect(benchHoursProblems(hours)).toEqual([])
  for (const hours of ['-0.5', '168.5'])
    expect(benchHoursProblems(hours)).toMatchObject([{ code: 'person.benchHours', field: 'benchHours' }])
})
