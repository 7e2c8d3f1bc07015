import { describe, expect, it } from 'vitest'
import { pickedBy } from '../../renderer/shell/picked.ts'

const person = (id: number, name: string, initials = '') => ({ id, name, initials })
const people = [
  person(7, 'Ines Marrow'),
  person(3, 'Tobias Vane'),
  person(5, 'Tilda Wren'),
  person(9, 'Ann Hale', 'xh'),
]
const idOf = (key: string) => pickedBy(key, people)?.id

describe('whoever a key stands for', () => {
  it('is by a figure the one at that place', () => {
    expect(['1', '4', '5', '0'].map(idOf)).toEqual([7, 9, undefined, undefined])
  })

  it('is by a letter the only one whose initials begin with it, small or capital', () => {
    expect(['i', 'I', 'X', 't', 'a', 'Tab', 'Escape'].map(idOf)).toEqual([
      7,
      7,
      9,
      undefined,
      undefined,
      undefined,
      undefined,
    ])
  })
})
