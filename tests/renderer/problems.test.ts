import { expect, test } from 'vitest'
import { controlFor } from '../../renderer/parts/problems.tsx'

const names = ['owner.name', 'owner.address', 'lines[0].quantity', 'lines[1].quantity', 'fault', 'clock']

test('a problem leads to the control of its own path', () => {
  expect(controlFor('lines[1].quantity', names)).toBe('lines[1].quantity')
})

test('a problem of a whole group leads to the first control inside it', () => {
  expect(controlFor('owner', names)).toBe('owner.name')
  expect(controlFor('lines', names)).toBe('lines[0].quantity')
})

test('a problem deeper than any control leads to the control that contains it', () => {
  expect(controlFor('clock.id', names)).toBe('clock')
})

test('a problem of the whole form, or of a field that is not there, leads nowhere', () => {
  expect(controlFor('', names)).toBeUndefined()
  expect(controlFor('faul', names)).toBeUndefined()
  expect(controlFor('nothing', names)).toBeUndefined()
})
