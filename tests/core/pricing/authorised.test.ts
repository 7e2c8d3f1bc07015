import { expect, test } from 'vitest'
import { minor } from '../../../core/money/minor.ts'
import { authorisedTotal } from '../../../core/pricing/authorised.ts'
import { must, refusals } from '../must.ts'

// Consumer Protection Act 2002 (Ontario) s. 10: at most 10 % over an estimate unless agreed.
test('a bill may pass what was agreed by the percentage or the amount, whichever is less, rounded down', () => {
  const most = (limit: number, overrunPercent: string, overrunAmount: string) =>
    must(authorisedTotal(minor(limit), { overrunPercent, overrunAmount }, 'CAD'))
  expect(most(40_000, '10', '100')).toBe(44_000)
  expect(most(40_000, '10', '25')).toBe(42_500)
  expect(most(999, '10', '100')).toBe(1098)
  expect(most(40_000, '7.5', '100')).toBe(43_000)
  expect(most(40_000, '0', '100')).toBe(40_000)
})

test('an overrun that is no figure, or a sum beyond what can be kept, is a problem', () => {
  expect(refusals(authorisedTotal(minor(1), { overrunPercent: '-1', overrunAmount: '1e2' }, 'CAD'))).toEqual([
    'money.notADecimal overrunAmount',
    'number.negative overrunPercent',
  ])
  const most = minor(Number.MAX_SAFE_INTEGER)
  expect(refusals(authorisedTotal(most, { overrunPercent: '1', overrunAmount: '10' }, 'CAD'))).toEqual([
    'money.tooLarge limit',
  ])
})
