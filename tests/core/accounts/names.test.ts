import { expect, test } from 'vitest'
import { accountNames } from '../../../core/accounts/names.ts'
import { taxDues } from '../../../core/tax/due.ts'

test('the accounts are offered from what is owed to what was taken', () => {
  expect(accountNames).toEqual([
    'owed',
    'held',
    'cash',
    'card',
    'transfer',
    'cheque',
    'income',
    'tax',
    'writtenOff',
    'rounding',
    'drawer',
    'taken',
  ])
})

test('tax is due with the invoice or with the payment', () => {
  expect(taxDues).toEqual(['invoice', 'payment'])
})
