import fc from 'fast-check'
import { expect, test } from 'vitest'
import { minor } from '../../../core/money/minor.ts'
import {
  invoiceProposal,
  type ProposalRules,
  type ProposedLine,
} from '../../../core/pricing/invoice-proposal.ts'
import { priced } from '../../../core/pricing/price.ts'
import { must } from '../must.ts'

const vat = [{ code: 'VAT', rate: '20' }]

const rules = (most: number | null): ProposalRules => ({
  currency: 'GBP',
  tax: { basis: 'group', mode: 'half-up', inclusive: false },
  taxesOfParts: vat,
  mostMinor: most === null ? null : minor(most),
})

const agreedLine = (more: Partial<ProposedLine>): ProposedLine => ({
  kind: 'part',
  description: 'Mainspring',
  quantity: '1',
  unit: '20.00',
  charge: '0',
  taxes: vat,
  work: null,
  partId: 7,
  ...more,
})

const labour = agreedLine({ kind: 'labour', description: 'Overhaul', unit: '100.00', partId: null })
const used = (quantity: number, unitPriceMinor = 2150, partId = 7) => ({
  partId,
  name: partId === 7 ? 'Mainspring 22 × 0.45' : 'Suspension spring',
  quantity,
  unitPriceMinor: minor(unitPriceMinor),
})

test('an agreed line and the same part used for it are one line, at the agreed price', () => {
  const proposal = invoiceProposal([labour, agreedLine({})], [used(1)], rules(100_000))
  expect(proposal).toEqual({ agreed: [labour, agreedLine({})], used: [], left: [] })
})

test('pieces beyond the agreed ones are a line of their own, at the price frozen when they were used', () => {
  const { used: further } = invoiceProposal([agreedLine({})], [used(1, 1900), used(2, 2150)], rules(100_000))
  expect(further).toEqual([agreedLine({ description: 'Mainspring 22 × 0.45', quantity: '2', unit: '21.50' })])
})

test('a part used that no line names is proposed while the whole keeps within the go-ahead, tax included', () => {
  const part = used(1, 500, 8)
  // 100.00 and 5.00 with 20 % make 126.00.
  expect(invoiceProposal([labour], [part], rules(12_600)).used).toHaveLength(1)
  const over = invoiceProposal([labour], [part], rules(12_599))
  expect(over.used).toEqual([])
  expect(over.left.map(({ reason, line }) => [reason, line.description])).toEqual([
    ['beyond-limit', 'Suspension spring'],
  ])
})

test('where an agreed part was written by hand, a part used may be the same: it is left for a person to say', () => {
  const { used: further, left } = invoiceProposal([agreedLine({ partId: null })], [used(1)], rules(100_000))
  expect(further).toEqual([])
  expect(left.map(({ reason }) => reason)).toEqual(['perhaps-agreed'])
})

test('a part written by hand among others is enough', () => {
  const agreed = [labour, agreedLine({ partId: null }), agreedLine({ partId: 8 })]
  expect(invoiceProposal(agreed, [used(1)], rules(100_000)).left).toMatchObject([
    { reason: 'perhaps-agreed' },
  ])
})

test('what is left of a piece beyond the agreed ones is billed as a whole one', () => {
  const { used: further } = invoiceProposal([agreedLine({ quantity: '0.5' })], [used(1)], rules(100_000))
  expect(further).toMatchObject([{ quantity: '1' }])
})

test('a part so dear that the whole cannot be priced stays out', () => {
  const dear = used(1, Number.MAX_SAFE_INTEGER)
  expect(invoiceProposal([labour], [dear], rules(100_000)).left).toMatchObject([{ reason: 'beyond-limit' }])
})

test('where nothing is agreed, as under warranty, nothing is proposed', () => {
  const { used: further, left } = invoiceProposal([], [used(1)], rules(null))
  expect(further).toEqual([])
  expect(left.map(({ reason }) => reason)).toEqual(['nothing-agreed'])
})

test('no piece is billed twice, none is lost, and what is proposed keeps within the limit', () => {
  const parts = fc.array(
    fc.record({
      partId: fc.constantFrom(7, 8),
      quantity: fc.integer({ min: 0, max: 9 }),
      unitPriceMinor: fc.integer({ min: 0, max: 9000 }),
    }),
    { maxLength: 6 },
  )
  const lines = fc.array(
    fc.record({ partId: fc.constantFrom(7, 8), quantity: fc.integer({ min: 1, max: 9 }).map(String) }),
    { maxLength: 4 },
  )
  fc.assert(
    fc.property(lines, parts, fc.integer({ min: 0, max: 300_000 }), (agreedParts, usedParts, most) => {
      const agreed = agreedParts.map(agreedLine)
      const taken = usedParts.map(({ partId, quantity, unitPriceMinor }) =>
        used(quantity, unitPriceMinor, partId),
      )
      const proposal = invoiceProposal(agreed, taken, rules(most))
      for (const id of [7, 8]) {
        const count = (all: readonly { partId: number | null; quantity: string | number }[]) =>
          all.filter(one => one.partId === id).reduce((sum, one) => sum + Number(one.quantity), 0)
        const further = count(proposal.used) + count(proposal.left.map(({ line }) => line))
        expect(further).toBe(Math.max(0, count(taken) - count(agreed)))
      }
      const { currency, tax } = rules(most)
      const whole = must(priced({ currency, tax, lines: [...agreed, ...proposal.used] })).taxInclusive
      if (proposal.used.length > 0) expect(whole).toBeLessThanOrEqual(most)
    }),
  )
})
