import { expect, test } from 'vitest'
import { chargesTax, lineTaxes, taxRules } from '../../../core/shop/tax-rules.ts'
import { testSettings } from '../../electron/handler-fixture.ts'

const { tax } = testSettings
const reduced = [{ code: 'VAT', rate: '5' }]

test('a line bears its own taxes where it says so, also none, and the shop’s on its kind otherwise', () => {
  const shop = { ...tax, byKind: { ...tax.byKind, part: reduced } }
  expect(lineTaxes({ kind: 'part' }, shop)).toEqual(reduced)
  expect(lineTaxes({ kind: 'part', taxes: null }, shop)).toEqual(reduced)
  expect(lineTaxes({ kind: 'labour' }, shop)).toEqual([{ code: 'VAT', rate: '20' }])
  expect(lineTaxes({ kind: 'labour', taxes: reduced }, shop)).toEqual(reduced)
  expect(lineTaxes({ kind: 'labour', taxes: [] }, shop)).toEqual([])
})

test('a document carries how its tax is worked out, and not what the shop charges on which kind', () => {
  const { basis, mode, inclusive } = tax
  expect(taxRules({ ...tax, aggregate: undefined })).toEqual({ basis, mode, inclusive })
  expect(taxRules({ ...tax, aggregate: false })).toEqual({ basis, mode, inclusive, aggregate: false })
})

test('a shop charges tax as soon as one kind of line bears one', () => {
  const none = { labour: [], part: [], outside: [], fee: [] }
  expect(chargesTax({ ...tax, byKind: none })).toBe(false)
  expect(chargesTax({ ...tax, byKind: { ...none, fee: reduced } })).toBe(true)
})
