import fc from 'fast-check'
import { expect, test } from 'vitest'
import { minor } from '../../../core/money/minor.ts'
import { type BookAsked, type BookFacts, bookLine, sameFigures } from '../../../core/pricing/book-line.ts'
import { estimateFeesIn } from '../../../core/pricing/estimate-fees.ts'
import { type LineKind, lineKinds } from '../../../core/pricing/kinds/index.ts'
import { labourPrice } from '../../../core/pricing/labour-price.ts'
import { lineAmount } from '../../../core/pricing/line-amount.ts'
import { lineWorking } from '../../../core/pricing/line-working.ts'
import { commonHours, type PriceBook } from '../../../core/pricing/price-book.ts'
import { openingPrices } from '../../../core/shop/defaults.ts'
import { workingSteps } from '../../../core/words/en/working.ts'
import { must, refusals } from '../must.ts'

const book: PriceBook = {
  ...openingPrices('62.50'),
  minimumCharge: '45',
  rushPercent: '25',
  hours: [
    { work: 'overhaul', form: null, trains: 2, hours: '4' },
    { work: 'set-up', form: null, trains: null, hours: '0.5' },
    { work: 'dial-cleaning', form: null, trains: null, hours: '1' },
  ],
  callOut: { fee: '40', freeDistance: '10', perDistance: '0.45', eachFurtherClock: '15' },
  estimateFee: '25',
}

const facts: BookFacts = { form: 'mantel', trains: 2, part: null, feePaidMinor: minor(0) }

const asked = (ask: BookAsked, more: Partial<BookFacts> = {}, prices = book) =>
  bookLine(prices, ask, { ...facts, ...more }, 'GBP')

const labour = (more: Partial<Extract<BookAsked, { from: 'labour' }>> = {}): BookAsked => ({
  from: 'labour',
  work: 'overhaul',
  furtherHours: '0',
  rush: false,
  ...more,
})

const figures = (line: ReturnType<typeof asked>) => {
  const { kind, work, quantity, unit, charge } = must(line)
  return [kind, work, quantity, unit, charge]
}

const read = (line: ReturnType<typeof asked>) =>
  must(line).working.map(({ code, values }) => workingSteps[code as keyof typeof workingSteps](values))

test('work of the book is its hours at the bench rate', () => {
  expect(figures(asked(labour()))).toEqual(['labour', 'overhaul', '4', '62.5', '0.00'])
  expect(figures(asked(labour({ furtherHours: '1.5' })))).toEqual([
    'labour',
    'overhaul',
    '5.5',
    '62.5',
    '0.00',
  ])
})

test('what the minimum and rush work add stands as the charge of the line, with the working of both', () => {
  const line = asked(labour({ work: 'set-up', rush: true }))
  expect(figures(line)).toEqual(['labour', 'set-up', '0.5', '62.5', '25.00'])
  expect(read(line)).toEqual([
    '0.5 h by the price book',
    '0.5 h at 62.5 an hour',
    'raised to the minimum charge of 45.00',
    '25 % for rush work, 11.25',
  ])
})

test('a line of labour prices to the very amount of the book, whatever its figures', () => {
  const cents = fc.integer({ min: 0, max: 99_999 }).map(n => (n / 100).toFixed(2))
  fc.assert(
    fc.property(cents, cents, cents, cents, fc.boolean(), (benchRate, hours, minimum, percent, rush) => {
      const prices: PriceBook = {
        ...book,
        benchRate,
        minimumCharge: minimum,
        rushPercent: percent,
        hours: [{ work: 'repair', form: null, trains: null, hours }],
      }
      const line = must(asked(labour({ work: 'repair', rush }), {}, prices))
      const price = must(labourPrice(prices, { work: 'repair', form: 'mantel', trains: 2, rush }, 'GBP'))
      expect(must(lineAmount(line, 2, ''))).toBe(BigInt(price.amount))
    }),
  )
})

test('a part is sold by the markup on its cost or at the price the stores have', () => {
  const part = { costMinor: minor(980), priceMinor: minor(1860) }
  const marked = asked({ from: 'part', by: 'markup', pieces: 2 }, { part })
  expect(figures(marked)).toEqual(['part', null, '2', '19.60', '0'])
  expect(read(marked)).toEqual(['cost 9.8 plus 100 %', '2 at 19.60 each'])
  const priced = asked({ from: 'part', by: 'price', pieces: 1 }, { part })
  expect(figures(priced)).toEqual(['part', null, '1', '18.60', '0'])
  expect(read(priced)).toEqual(['18.60 each, as the stores have it'])
  expect(refusals(asked({ from: 'part', by: 'markup', pieces: 1 }))).toEqual(['book.noPart partId'])
})

test('outside work is its cost with the shop’s percentage', () => {
  expect(figures(asked({ from: 'outside', work: 're-silvering', cost: '85' }))).toEqual([
    'outside',
    're-silvering',
    '1',
    '102.00',
    '0',
  ])
})

test('a house call is one fee', () => {
  const line = asked({ from: 'call-out', distance: '24', clocks: 2 })
  expect(figures(line)).toEqual(['fee', 'call-out', '1', '61.30', '0'])
  expect(read(line)).toHaveLength(3)
})

test('a fee for an estimate is taken off only where it was paid, and just so much', () => {
  expect(figures(asked({ from: 'estimate-fee' }))).toEqual(['fee', 'estimate-fee', '1', '25.00', '0'])
  expect(figures(asked({ from: 'fee-credit' }, { feePaidMinor: minor(2000) }))).toEqual([
    'fee',
    'estimate-fee',
    '-1',
    '20.00',
    '0',
  ])
  expect(refusals(asked({ from: 'fee-credit' }))).toEqual(['book.noFeePaid from'])
  expect(refusals(asked({ from: 'estimate-fee' }, {}, { ...book, estimateFee: '0' }))).toEqual([
    'book.noFee from',
  ])
})

test('fees billed and taken off again come to nothing', () => {
  const line = { kind: 'fee', description: 'Fee', taxes: [], working: [], net: minor(0) } as const
  const fee = { ...line, quantity: '1', unit: '25', work: 'estimate-fee' } as const
  const other = { ...line, quantity: '1', unit: '40', work: 'call-out' } as const
  expect(must(estimateFeesIn([fee, other, fee], 'GBP'))).toBe(5000)
  expect(must(estimateFeesIn([fee, { ...fee, quantity: '-1' }], 'GBP'))).toBe(0)
})

test('figures are the same however they are written', () => {
  const line = { quantity: '4', unit: '62.5', charge: '0' }
  expect(sameFigures(line, { quantity: '4.0', unit: '62.50', charge: '0.00' })).toBe(true)
  expect(sameFigures(line, { ...line, unit: '62.51' })).toBe(false)
})

test('hours for a clock whose trains nobody has counted are those usual for its form, and the working says so', () => {
  const counted = must(asked(labour()))
  const supposed = must(asked(labour(), { trains: null }))
  expect(supposed).toMatchObject({ quantity: counted.quantity, unit: counted.unit, charge: counted.charge })
  expect(supposed.working).toEqual([{ code: 'trainsSupposed', values: { trains: 2 } }, ...counted.working])
})

test('trains that were counted go before those usual for the form', () => {
  const prices = { ...book, hours: commonHours }
  expect(must(asked(labour(), { trains: 3 }, prices)).quantity).toBe('5')
  expect(must(asked(labour(), { trains: null }, prices)).quantity).toBe('4')
})

test('a fee says that it is one, and what is taken off that it was paid', () => {
  expect(read(asked({ from: 'estimate-fee' }))).toEqual([workingSteps.estimateFee()])
  expect(read(asked({ from: 'fee-credit' }, { feePaidMinor: minor(1) }))).toEqual([
    workingSteps.feeCredited(),
  ])
  expect(refusals(asked({ from: 'estimate-fee' }, {}, { ...book, estimateFee: '-1' }))).toEqual([
    'number.negative estimateFee',
  ])
})

test('figures that are none are compared letter by letter', () => {
  const line = { quantity: 'four', unit: '62.5', charge: '0' }
  expect([sameFigures(line, line), sameFigures(line, { ...line, quantity: '4' })]).toEqual([true, false])
})

test('a line that no price book wrote tells its hours, or its pieces where there are several', () => {
  const steps = (kind: LineKind, quantity: string) =>
    lineWorking({ kind, quantity, unit: '12.50', taxes: [] }).map(({ code, values }) =>
      workingSteps[code as keyof typeof workingSteps](values),
    )
  expect(steps('labour', '1')).toEqual(['1 h at 12.50 an hour'])
  expect(steps('part', '2')).toEqual(['2 at 12.50 each'])
  expect(steps('part', '1')).toEqual([])
})

test('only labour is charged by minutes at the bench; what is bought has a cost; a fee tells of no work', () => {
  const those = (is: 'fromBenchTime' | 'hasCost' | 'tellsWork') =>
    Object.entries(lineKinds).flatMap(([kind, rules]) => (rules[is] ? [kind] : []))
  expect(those('fromBenchTime')).toEqual(['labour'])
  expect(those('hasCost')).toEqual(['part', 'outside'])
  expect(those('tellsWork')).toEqual(['labour', 'part', 'outside'])
})
