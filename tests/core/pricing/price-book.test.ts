import { expect, test } from 'vitest'
import { callOutPrice } from '../../../core/pricing/call-out-price.ts'
import { outsidePrice, partPrice } from '../../../core/pricing/cost-price.ts'
import { labourPrice } from '../../../core/pricing/labour-price.ts'
import { bookHours, commonHours, type PriceBook } from '../../../core/pricing/price-book.ts'
import { workingSteps } from '../../../core/words/en/working.ts'
import { must, refusals } from '../must.ts'

const book: PriceBook = {
  benchRate: '62.50',
  minimumCharge: '45',
  hours: [
    ...commonHours,
    { work: 'overhaul', form: 'longcase', trains: 2, hours: '6' },
    { work: 'overhaul', form: 'cuckoo', trains: null, hours: '3.5' },
    { work: 'set-up', form: null, trains: null, hours: '0.5' },
  ],
  markup: [
    { upToCost: '10', percent: '100' },
    { upToCost: '50', percent: '60' },
    { upToCost: null, percent: '33.3' },
  ],
  outsidePercent: '15',
  rushPercent: '25',
  callOut: { fee: '40', freeDistance: '10', perDistance: '0.45', eachFurtherClock: '15' },
  estimateFee: '25',
}

/** The working as a person reads it. */
const read = (working: readonly { code: string; values: Readonly<Record<string, string | number>> }[]) =>
  working.map(({ code, values }) => workingSteps[code as keyof typeof workingSteps](values))

// Common practice (trade reference §9): 4 hours for two trains, 5 for three, parts and bushings extra.
test('common practice: an overhaul takes 4 hours for two trains and 5 for three', () => {
  const hours = (trains: number) =>
    bookHours({ ...book, hours: commonHours }, 'overhaul', 'mantel', trains)?.hours
  expect([hours(2), hours(3), hours(1)]).toEqual(['4', '5', undefined])
})

test('the entry that names form and trains goes before the one that names either or neither', () => {
  expect(bookHours(book, 'overhaul', 'longcase', 2)?.hours).toBe('6')
  expect(bookHours(book, 'overhaul', 'cuckoo', 2)?.hours).toBe('3.5')
  expect(bookHours(book, 'overhaul', 'wall', 2)?.hours).toBe('4')
})

test('labour is hours at the bench rate, with its working', () => {
  const price = must(
    labourPrice(book, { work: 'overhaul', form: 'longcase', trains: 2, furtherHours: '1.25' }, 'GBP'),
  )
  expect(price.amount).toBe(45313)
  expect(read(price.working)).toEqual([
    '6 h by the price book',
    '1.25 h beyond the book',
    '7.25 h at 62.5 an hour',
  ])
})

test('less than the minimum charge is raised to it before rush work is added', () => {
  const price = must(labourPrice(book, { work: 'set-up', form: 'mantel', trains: 1, rush: true }, 'GBP'))
  expect(price.amount).toBe(5625)
  expect(read(price.working).slice(2)).toEqual([
    'raised to the minimum charge of 45.00',
    '25 % for rush work, 11.25',
  ])
})

test('work the book does not name is a problem, not a guess', () => {
  expect(refusals(labourPrice(book, { work: 'repair', form: 'mantel', trains: 1 }, 'GBP'))).toEqual([
    'book.noHours work',
  ])
})

test.each([
  ['10', 2000],
  ['10.01', 1602],
  ['50', 8000],
  ['0.035', 7],
  ['120', 15996],
])('a part that cost %s is priced by the tier its cost falls in: %d', (cost, amount) => {
  expect(must(partPrice(book, cost, 'GBP')).amount).toBe(amount)
})

test('a tier that does not rise, or none that reaches the cost, is a problem', () => {
  const markup = [
    { upToCost: '50', percent: '60' },
    { upToCost: '10', percent: '100' },
  ]
  expect(refusals(partPrice({ ...book, markup }, '5', 'GBP'))).toEqual([
    'book.markupOrder markup[1].upToCost',
  ])
  expect(refusals(partPrice({ ...book, markup: markup.slice(0, 1) }, '51', 'GBP'))).toEqual([
    'book.noMarkup cost',
  ])
})

test('outside work is charged on with its percentage', () => {
  const price = must(outsidePrice(book, '80', 'GBP'))
  expect([price.amount, ...read(price.working)]).toEqual([9200, 'outside work at 80 plus 15 %'])
})

test('a house call is its fee, the distance beyond what is free, and each clock after the first', () => {
  const price = must(callOutPrice(book, { distance: '24.5', clocks: 3 }, 'GBP'))
  expect(price.amount).toBe(4000 + 653 + 3000)
  expect(read(price.working)).toEqual([
    'house call 40.00',
    '14.5 beyond the free distance at 0.45',
    '2 further clocks at 15.00 each',
  ])
  expect(must(callOutPrice(book, { distance: '10', clocks: 1 }, 'GBP')).amount).toBe(4000)
})

test('figures that are none are problems of the book, all at once', () => {
  const wrong = { ...book, benchRate: '-1', minimumCharge: '45.001', rushPercent: '1e2' }
  expect(
    refusals(labourPrice(wrong, { work: 'set-up', form: 'wall', trains: 1, rush: true }, 'GBP')),
  ).toEqual(['money.tooPrecise minimumCharge', 'number.negative benchRate', 'number.notADecimal rushPercent'])
  expect(refusals(callOutPrice(book, { distance: '-1', clocks: 0 }, 'XXX'))).toContain('book.clocks clocks')
})
