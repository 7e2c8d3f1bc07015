import { expect, test } from 'vitest'
import { repairCode, typedOrScanned } from '../../../core/papers/repair-code.ts'

test('a scanned code is the number of its repair again', () => {
  expect(repairCode({ number: '2201' })).toBe('countwheel:2201')
  expect(typedOrScanned(repairCode({ number: '2201' }))).toBe('2201')
  expect(typedOrScanned(' countwheel:2201\n')).toBe('2201')
})

test('what was typed stays as it is but for the blanks around it', () => {
  expect(typedOrScanned('  Pell ')).toBe('Pell')
  expect(typedOrScanned('count wheel')).toBe('count wheel')
  expect(typedOrScanned('a countwheel:2201')).toBe('a countwheel:2201')
})
