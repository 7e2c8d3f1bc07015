import type { Period } from '../../core/calendar/period.ts'
import { minorText } from '../../core/money/minor.ts'
import { taxView } from '../read/tax.ts'
import { readSettings } from '../rows/settings.ts'
import type { Table } from './table.ts'

/** The tax of a period by code, rate and kind of line, and what bore none, due as the shop's settings say. */
export const taxTable = ({ from, to }: Period): Table => ({
  columns: ['from', 'to', 'due', 'tax', 'rate', 'kind', 'taxable', 'amount'],
  amounts: ['taxable', 'amount'],
  *rows(read) {
    const money = (amount: Parameters<typeof minorText>[0]) =>
      minorText(amount, readSettings(read).place.currency)
    const { due, byKind, untaxed } = taxView(read, from, to)
    for (const { code, rate, kind, taxableMinor, taxMinor } of byKind)
      yield { from, to, due, tax: code, rate, kind, taxable: money(taxableMinor), amount: money(taxMinor) }
    for (const { kind, netMinor } of untaxed)
      yield { from, to, due, tax: null, rate: null, kind, taxable: money(netMinor), amount: money(0n) }
  },
})
