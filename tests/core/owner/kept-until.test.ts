import { expect, it } from 'vitest'
import { keptUntil } from '../../../core/owner/kept-until.ts'

it('a paper is kept to the end of the year that lies so many years after its issue, whatever day of the year that was', () => {
  expect(keptUntil('2027-01-01', 10)).toBe('2037-12-31')
  expect(keptUntil('2027-12-31', 10)).toBe('2037-12-31')
  expect(keptUntil('2028-01-01', 6)).toBe('2034-12-31')
})
