import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CreditChoice, creditOf, isCredited } from '../../../core/accounts/credit.ts'
import { amountOf, linesLeft } from '../../../core/accounts/lines-left.ts'
import { minor } from '../../../core/money/minor.ts'
import type { PaperLine } from '../../../core/papers/contents.ts'
import { type PricedContents, repriced } from '../../../core/papers/price-input.ts'
import { priced } from '../../../core/pricing/price.ts'
import type { PriceInput, PriceLine } from '../../../core/pricing/price-input.ts'
import { taxRows } from '../../../core/tax/rows.ts'
import { must, refusals } from '../must.ts'
import { anyPriceInput } from '../tax/any-document.ts'

/** An invoice over the lines of a document that was priced. */
function invoiceOf({ currency, tax, lines }: PriceInput): PricedContents {
  const figures = must(priced({ currency, tax, lines }))
  const net = (i: number) => figures.lines[i]?.net ?? minor(0)
  return {
    currency,
    tax,
    priced: figures,
    lines: lines.map((line, i) => ({ ...line, description: 'Work', working: [], net: net(i) })),
  }
}

/** What a credit note of `choices` says, as a paper that later ones look back at. */
const credited = (
  invoice: PricedContents,
  before: PricedContents[],
  choices: CreditChoice[] | null,
): PricedContents => ({
  currency: invoice.currency,
  tax: invoice.tax,
  ...must(creditOf(invoice, before, choices)),
})

const byQuantity = (line: number, quantity: string): CreditChoice => ({ line, quantity, amount: null })
const byAmount = (line: number, amount: string): CreditChoice => ({ line, quantity: null, amount })

const thirds = invoiceOf({
  currency: 'USD',
  tax: { basis: 'group', mode: 'half-up', inclusive: false },
  lines: [1, 2, 3].map(() => ({
    kind: 'part' as const,
    quantity: '1',
    unit: '0.36',
    taxes: [{ code: 'ST', rate: '7' }],
  })),
})

describe('a credit of an invoice', () => {
  it('takes back in parts exactly the tax that the invoice rounded once', () => {
    // 3 × 0.36 bears 7 % of 1.08 = 0.0756, rounded 0.08 (SSUTA §324, invoice basis); each third alone would round to 0.03.
    expect(thirds.priced.tax).toBe(8)
    const first = credited(thirds, [], [byQuantity(0, '1')])
    const second = credited(thirds, [first], [byQuantity(1, '1')])
    const third = credited(thirds, [first, second], null)
    expect([first, second, third].map(note => -note.priced.tax)).toEqual([3, 2, 3])
    expect(isCredited(thirds, [first, second])).toBe(false)
    expect(isCredited(thirds, [first, second, third])).toBe(true)
  })

  it('leaves of a line what its quantities and amounts have not taken', () => {
    const invoice = invoiceOf({
      currency: 'GBP',
      tax: { basis: 'group', mode: 'half-up', inclusive: false },
      lines: [
        {
          kind: 'labour',
          quantity: '7.5',
          unit: '48.00',
          charge: '20.00',
          taxes: [{ code: 'VAT', rate: '20' }],
        },
      ],
    })
    const first = credited(invoice, [], [byQuantity(0, '2')])
    const second = credited(invoice, [first], [byAmount(0, '4.00')])
    expect(first.priced).toMatchObject({ taxExclusive: -9600, tax: -1920 })
    expect(linesLeft(invoice, [first, second])).toEqual([{ quantity: '5.5', amount: 28_000 }])
    const rest = credited(invoice, [first, second], [byQuantity(0, '5.5')])
    expect(rest.priced.taxExclusive).toBe(-28_000)
    expect(isCredited(invoice, [first, second, rest])).toBe(true)
  })

  it('of everything mirrors the invoice to the cent, surcharges too', () => {
    fc.assert(
      fc.property(anyPriceInput, input => {
        const invoice = invoiceOf({
          ...input,
          lines: input.lines.map((line, i) => (i === 0 ? { ...line, charge: '3.21' } : line)),
        })
        const whole = credited(invoice, [], null)
        expect(whole.priced.taxInclusive + invoice.priced.taxInclusive).toBe(0)
        for (const [i, line] of whole.lines.entries()) expect(line.net + (invoice.lines[i]?.net ?? 0)).toBe(0)
        expect(whole.priced.taxes.map(({ tax }) => -tax)).toEqual(
          invoice.priced.taxes.map(({ tax }) => (tax === 0 ? -0 : tax)),
        )
      }),
    )
  })

  it('names every choice that is not there, said twice, said both ways or more than is left', () => {
    const first = credited(thirds, [], [byAmount(0, '0.30')])
    const refused = creditOf(
      thirds,
      [first],
      [
        byAmount(0, '0.07'),
        byQuantity(1, '2'),
        { line: 2, quantity: '1', amount: '0.10' },
        byQuantity(9, '1'),
        byQuantity(1, '1'),
      ],
    )
    expect(refused.ok ? [] : refused.problems.map(({ code, field }) => [code, field])).toEqual([
      ['credit.amountLeft', 'lines[0].amount'],
      ['credit.quantityLeft', 'lines[1].quantity'],
      ['credit.eitherWay', 'lines[2].quantity'],
      ['credit.noLine', 'lines[3].line'],
      ['credit.lineTwice', 'lines[4].line'],
    ])
  })

  it('never comes to more than the invoice where other lines stand against it', () => {
    const invoice = invoiceOf({
      currency: 'GBP',
      tax: { basis: 'group', mode: 'half-up', inclusive: false },
      lines: [
        { kind: 'labour', quantity: '1', unit: '100', taxes: [] },
        { kind: 'fee', quantity: '-1', unit: '25', taxes: [] },
      ],
    })
    const refused = creditOf(invoice, [], [byQuantity(0, '1')])
    expect(refused.ok ? [] : refused.problems[0]).toMatchObject({
      code: 'credit.moreThanLeft',
      values: { left: '75.00' },
    })
    expect(must(creditOf(invoice, [], [byQuantity(0, '1'), byQuantity(1, '1')])).priced.taxInclusive).toBe(
      -7500,
    )
  })

  it('in any parts adds up to the invoice and each of its taxes once nothing is left, and prices to the same figures again', () => {
    const shares = fc.array(
      fc.record({ line: fc.nat(7), part: fc.integer({ min: 1, max: 99 }), by: fc.boolean() }),
      {
        maxLength: 5,
      },
    )
    fc.assert(
      fc.property(anyPriceInput, shares, (input, parts) => {
        const lines = input.lines.map(line => ({ ...line, quantity: line.quantity.replace('-', '') }))
        const invoice = invoiceOf({ ...input, lines })
        const notes: PricedContents[] = []
        const left = () =>
          invoice.priced.taxInclusive + notes.reduce((sum, note) => sum + note.priced.taxInclusive, 0)
        for (const { line, part, by } of parts) {
          const own = linesLeft(invoice, notes)[line]
          if (!own || own.amount === 0) continue
          const choice = by
            ? byAmount(line, (Math.ceil((own.amount * part) / 100) / 100).toFixed(2))
            : byQuantity(line, String(Math.max(Math.floor(Number(own.quantity) * part) / 100, 0.01)))
          const note = creditOf(invoice, notes, [choice])
          if (note.ok) notes.push({ currency: invoice.currency, tax: invoice.tax, ...note.value })
          expect(left()).toBeGreaterThanOrEqual(0)
        }
        const rest = must(creditOf(invoice, notes, null))
        notes.push({ currency: invoice.currency, tax: invoice.tax, ...rest })
        expect(left()).toBe(0)
        for (const { code, rate, tax } of invoice.priced.taxes) {
          const own = notes.flatMap(note => note.priced.taxes.filter(t => t.code === code && t.rate === rate))
          expect(own.reduce<number>((sum, group) => sum + group.tax, tax)).toBe(0)
        }
        for (const note of notes) {
          expect(must(repriced(note))).toEqual(note.priced)
          const rows = must(taxRows(note))
          expect(rows.reduce((sum, row) => sum + row.tax, 0) + 0).toBe(note.priced.tax)
        }
        expect(linesLeft(invoice, notes).every(({ amount }) => amount === 0)).toBe(true)
      }),
      { numRuns: 400 },
    )
  })
})

describe('the lines of a credit', () => {
  const plain = { basis: 'group', mode: 'half-up', inclusive: false } as const
  const line = (more: Partial<PriceLine>): PriceLine => ({
    kind: 'labour',
    quantity: '1',
    unit: '10.00',
    taxes: [],
    ...more,
  })
  const invoice = (...lines: PriceLine[]) => invoiceOf({ currency: 'GBP', tax: plain, lines })
  const refused = (of: PricedContents, before: PricedContents[], ...choices: CreditChoice[]) =>
    refusals(creditOf(of, before, choices))

  it('turn the sign of what they take back, of a line below nothing too', () => {
    const paper = invoice(
      line({ quantity: '2', unit: '30.00' }),
      line({ kind: 'fee', quantity: '-2', unit: '25.00' }),
    )
    const whole = credited(paper, [], null)
    expect(whole.lines.map(({ quantity, net }) => [quantity, net])).toEqual([
      ['-2', -6000],
      ['2', 5000],
    ])
    const part = credited(paper, [], [byQuantity(0, '1'), byQuantity(1, '1')])
    expect(part.lines.map(({ quantity, net }) => [quantity, net])).toEqual([
      ['-1', -3000],
      ['1', 2500],
    ])
    const amounts = credited(paper, [], [byAmount(0, '10.00'), byAmount(1, '4.00')])
    expect(amounts.lines.map(({ quantity, unit, net }) => [quantity, unit, net])).toEqual([
      ['-1', '10.00', -1000],
      ['1', '4.00', 400],
    ])
  })

  it('keep what work they were, and say by what they take it back', () => {
    const paper = invoice(line({ quantity: '2' }))
    const work = { ...paper, lines: paper.lines.map(one => ({ ...one, work: 'overhaul' as const })) }
    const [byAmounts] = credited(work, [], [byAmount(0, '1.00')]).lines
    expect(byAmounts).toMatchObject({ work: 'overhaul', credits: { line: 0, by: 'amount' } })
    const [byQuantities] = credited(work, [], [byQuantity(0, '1')]).lines
    expect(byQuantities).toMatchObject({ work: 'overhaul', credits: { line: 0, by: 'quantity' } })
    expect(credited(paper, [], [byAmount(0, '1.00')]).lines[0]).not.toHaveProperty('work')
  })

  it('have the rest of a line as a charge or an allowance beside its unit price', () => {
    const [plainRest] = credited(invoice(line({})), [], null).lines
    expect([plainRest?.charge, plainRest?.allowance]).toEqual([undefined, undefined])
    const charged = invoice(line({ quantity: '2', charge: '5.00' }))
    expect(credited(charged, [], null).lines[0]).toMatchObject({
      quantity: '-2',
      allowance: '5.00',
      net: -2500,
    })
    const first = credited(charged, [], [byAmount(0, '9.00')])
    expect(credited(charged, [first], null).lines[0]).toMatchObject({
      quantity: '-2',
      charge: '4.00',
      net: -1600,
    })
  })

  it('take a line that is a charge alone by its amount', () => {
    const paper = invoice(line({ quantity: '0', unit: '0', charge: '5.00' }), line({}))
    expect(credited(paper, [], null).lines.map(({ credits, net }) => [credits?.by, net])).toEqual([
      ['amount', -500],
      ['quantity', -1000],
    ])
  })

  it('leave out lines of which nothing is left', () => {
    const paper = invoice(line({}), line({ quantity: '2' }))
    const first = credited(paper, [], [byQuantity(0, '1')])
    expect(credited(paper, [first], null).lines.map(({ credits }) => credits?.line)).toEqual([1])
    expect(refused(paper, [first], byQuantity(0, '1'))).toEqual(['credit.lineCredited lines[0].quantity'])
    expect(refused(paper, [first], byAmount(0, '1.00'))).toEqual(['credit.lineCredited lines[0].amount'])
  })

  it('may come to all that is left of a line and to no cent more', () => {
    const paper = invoice(line({ quantity: '3' }))
    expect(refused(paper, [], byAmount(0, '30.00'))).toEqual([])
    expect(refused(paper, [], byAmount(0, '30.01'))).toEqual(['credit.amountLeft lines[0].amount'])
    for (const none of ['0', '-1.00'])
      expect(refused(paper, [], byAmount(0, none))).toEqual(['number.notPositive lines[0].amount'])
    const first = credited(paper, [], [byAmount(0, '20.00')])
    expect(refused(paper, [first], byQuantity(0, '1'))).toEqual([])
    expect(refused(paper, [first], byQuantity(0, '2'))).toEqual(['credit.amountLeft lines[0].quantity'])
    expect(credited(paper, [first], [byQuantity(0, '3')]).priced.taxInclusive).toBe(-1000)
  })

  it('say of what whole they are a part, unless they take back everything at once', () => {
    const paper = invoice(line({ quantity: '2', taxes: [{ code: 'VAT', rate: '20' }] }))
    const first = must(creditOf(paper, [], [byQuantity(0, '1')]))
    expect(first.partOf).toMatchObject([{ code: 'VAT', whole: { amount: 2000, tax: 400 } }])
    expect(must(creditOf(paper, [], null))).not.toHaveProperty('partOf')
    expect(must(creditOf(paper, [credited(paper, [], [byQuantity(0, '1')])], null))).toHaveProperty('partOf')
  })

  it('leave of an invoice no other sign than it has, also after a credit before and below nothing', () => {
    const paper = invoice(line({ unit: '100.00' }), line({ kind: 'fee', quantity: '-1', unit: '25.00' }))
    const first = credited(paper, [], [byAmount(0, '70.00')])
    expect(refused(paper, [first], byAmount(0, '5.00'))).toEqual([])
    expect(refused(paper, [first], byAmount(0, '5.01'))).toEqual(['credit.moreThanLeft lines'])
    const below = invoice(line({}), line({ kind: 'fee', quantity: '-1', unit: '25.00' }))
    expect(refused(below, [], byAmount(1, '15.00'))).toEqual([])
    expect(refused(below, [], byAmount(1, '15.01'))).toEqual(['credit.moreThanLeft lines'])
  })

  it('have credited an invoice only once there was a credit, and nothing of any line is left', () => {
    const nothing = invoice(line({}), line({ kind: 'fee', quantity: '-1' }))
    expect(isCredited(nothing, [])).toBe(false)
    const part = credited(nothing, [], [byAmount(0, '4.00'), byAmount(1, '4.00')])
    expect(isCredited(nothing, [part])).toBe(false)
    expect(isCredited(nothing, [part, credited(nothing, [part], null)])).toBe(true)
    expect(isCredited(invoice(line({ quantity: '0' })), [])).toBe(false)
  })

  it('leave an invoice that came to nothing at nothing', () => {
    const nothing = invoice(line({}), line({ kind: 'fee', quantity: '-1' }))
    expect(refused(nothing, [], byAmount(0, '4.00'))).toEqual(['credit.moreThanLeft lines'])
    expect(refused(nothing, [], byAmount(0, '4.00'), byAmount(1, '4.00'))).toEqual([])
  })

  it('can be of a line that was free, and of one that was taken back by amounts say that nothing is left', () => {
    expect(refused(invoice(line({ unit: '0' })), [], byQuantity(0, '1'))).toEqual([])
    const paper = invoice(line({ quantity: '2' }))
    const first = credited(paper, [], [byAmount(0, '20.00')])
    expect(refused(paper, [first], byQuantity(0, '1'))).toEqual(['credit.amountLeft lines[0].quantity'])
  })

  it('take by its amount a line that is a charge or an allowance of a cent, and by its quantity one that is nothing at all', () => {
    const none = { quantity: '0', unit: '0' }
    const paper = invoice(line({ ...none, charge: '0.01' }), line({ ...none, allowance: '0.01' }), line(none))
    expect(credited(paper, [], null).lines.map(({ credits, net }) => [credits?.by, net])).toEqual([
      ['amount', -1],
      ['amount', 1],
      ['quantity', 0],
    ])
    expect(refused(invoice(line({ ...none, charge: '0.01' })), [], byAmount(0, '0.01'))).toEqual([])
  })

  it('of a paper that cannot be read are a bug, which names what cannot be read', () => {
    const unread = { ...invoice(line({})).lines[0], unit: 'x', charge: 'y' } as PaperLine
    expect(() => amountOf(unread, 'GBP')).toThrow('a frozen paper cannot be read: line.unit, line.charge')
    const paper = invoice(line({}))
    const wrong = { ...paper, lines: paper.lines.map(one => ({ ...one, quantity: 'x' })) }
    expect(() => linesLeft(wrong, [])).toThrow('a frozen paper cannot be read: quantity')
  })

  it('of a paper that does not say what it takes back are those of the whole', () => {
    const paper = invoice(line({ quantity: '2' }), line({}))
    const mirror = credited(paper, [], null)
    const old = { ...mirror, lines: mirror.lines.map(({ credits: _credits, ...rest }) => rest) }
    expect(linesLeft(paper, [old])).toEqual([
      { quantity: '0', amount: 0 },
      { quantity: '0', amount: 0 },
    ])
  })
})
