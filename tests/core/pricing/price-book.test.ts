import { expect, test } from 'vitest'
import { callOutPrice } from '../../../core/pricing/call-out-price.ts'
import { outsidePrice, partPrice } from '../../../core/pricing/cost-price.ts'
import { labourPrice } from '../../../core/pricing/labour-price.ts'
import { bookHours, commonHours, openingHours, type PriceBook } from '../../../core/pricing/price-book.ts'
import { priceBookProblems } from '../../../core/pricing/price-book-problems.ts'
import { type Work, works } from '../../../core/vocabulary/work.ts'
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

test('of two entries that fit, the form counts for more than the trains, in whatever order the book has them', () => {
  const entry = (form: 'cuckoo' | null, trains: 2 | null, hours: string) =>
    ({ work: 'overhaul', form, trains, hours }) as const
  const all = [
    entry(null, null, '1'),
    entry(null, 2, '2'),
    entry('cuckoo', null, '3'),
    entry('cuckoo', 2, '4'),
  ]
  const best = (hours: PriceBook['hours']) => bookHours({ ...book, hours }, 'overhaul', 'cuckoo', 2)?.hours
  for (const [i, { hours }] of all.entries()) {
    expect(best(all.slice(0, i + 1))).toBe(hours)
    expect(best(all.slice(0, i + 1).toReversed())).toBe(hours)
  }
  expect(best([entry(null, 2, '5'), entry(null, 2, '6')])).toBe('5')
})

test('a new shop’s book has hours for every kind of work on a clock of one, two and three trains', () => {
  const opening = { ...book, hours: openingHours }
  const hours = (work: Work) => [1, 2, 3].map(trains => bookHours(opening, work, 'wall', trains)?.hours)
  expect(Object.fromEntries(works.map(work => [work, hours(work)]))).toEqual({
    overhaul: ['3', '4', '5'],
    service: ['1.5', '2', '2.5'],
    repair: ['1', '1', '1'],
    'set-up': ['0.5', '0.5', '0.5'],
    'case-repair': ['1', '1', '1'],
    'dial-repair': ['1', '1', '1'],
    'dial-cleaning': ['0.5', '0.5', '0.5'],
    're-silvering': ['2', '2', '2'],
  })
})

test('the same work on another form is another entry of the book', () => {
  const hours: PriceBook['hours'] = [
    { work: 'overhaul', form: 'wall', trains: 2, hours: '4' },
    { work: 'overhaul', form: 'cuckoo', trains: 2, hours: '3' },
  ]
  expect(priceBookProblems({ ...book, hours }, 'GBP')).toEqual([])
  expect(priceBookProblems({ ...book, hours: [...hours, ...hours.slice(1)] }, 'GBP')).toEqual([
    { code: 'book.hoursTwice', field: 'hours[2].work' },
  ])
})

test('hours that are none are problems of the book’s hours and of the further ones', () => {
  const repair = (hours: string) => [{ work: 'repair', form: null, trains: null, hours } as const]
  const wrong = { ...book, hours: repair('-1') }
  const asked = { work: 'repair', form: 'wall', trains: 1, furtherHours: '-2' } as const
  expect(refusals(labourPrice(wrong, asked, 'GBP'))).toEqual([
    'number.negative furtherHours',
    'number.negative hours',
  ])
  const rich = { ...book, benchRate: '90071992547409.92', hours: repair('1') }
  expect(refusals(labourPrice(rich, { ...asked, furtherHours: '0' }, 'GBP'))).toEqual([
    'money.tooLarge amount',
  ])
})

test('a cost or a percentage that is none is named by its field', () => {
  expect(refusals(partPrice(book, '-1', 'GBP'))).toEqual(['number.negative cost'])
  expect(refusals(outsidePrice({ ...book, outsidePercent: '-1' }, '1e2', 'GBP'))).toEqual([
    'money.notADecimal cost',
    'number.negative outsidePercent',
  ])
})

test('within the free distance and for one clock a house call is its fee alone, and its working says no more', () => {
  for (const distance of ['0', '5', '10']) {
    const { amount, working } = must(callOutPrice(book, { distance, clocks: 1 }, 'GBP'))
    expect([amount, ...read(working)]).toEqual([4000, 'house call 40.00'])
  }
  const free = { ...book, callOut: { ...book.callOut, perDistance: '0' } }
  expect(read(must(callOutPrice(free, { distance: '24', clocks: 1 }, 'GBP')).working)).toHaveLength(1)
})

test('one visit is to one clock at least and to a thousand at most, and to whole ones', () => {
  const clocks = (count: number) => refusals(callOutPrice(book, { distance: '0', clocks: count }, 'GBP'))
  expect([clocks(1), clocks(1000)]).toEqual([[], []])
  for (const count of [0, 1001, 1.5]) expect(clocks(count)).toEqual(['book.clocks clocks'])
})

test('every figure of a house call that is none is named', () => {
  const callOut = { fee: '-1', freeDistance: '-1', perDistance: '-1', eachFurtherClock: '-1' }
  expect(refusals(callOutPrice({ ...book, callOut }, { distance: '-1', clocks: 1 }, 'GBP'))).toEqual([
    'number.negative callOut.eachFurtherClock',
    'number.negative callOut.fee',
    'number.negative callOut.freeDistance',
    'number.negative callOut.perDistance',
    'number.negative distance',
  ])
})
