import { expect, test } from 'vitest'
import { type CoverInput, type Stay, warrantyCover } from '../../../core/warranty/cover.ts'
import { must, refusals } from '../must.ts'

const given: CoverInput = {
  terms: {
    length: 12,
    unit: 'months',
    convention: 'same-date',
    onComeback: 'continue',
    pausesInShop: true,
    exclusions: ['mainsprings', 'glass', 'set-up'],
  },
  start: '2026-01-10',
  stays: [],
  causes: [],
  on: '2026-06-01',
}
const comeback: Stay = { from: '2026-03-01', to: '2026-03-31', underWarranty: true }
const cover = (more: Partial<CoverInput>) => must(warrantyCover({ ...given, ...more }))
const codes = (more: Partial<CoverInput>) => cover(more).reasons.map(({ code }) => code)

test('within the term and nothing excluded it is covered', () => {
  expect(cover({})).toEqual({
    covered: true,
    lastDay: '2027-01-10',
    daysLeft: 223,
    began: '2026-01-10',
    pausedDays: 0,
    reasons: [{ code: 'inTerm', values: { lastDate: '2027-01-10' } }],
  })
})

test('an excluded cause is not covered, and every excluded cause is named', () => {
  const result = cover({ causes: ['glass', 'accident', 'set-up'] })
  expect(result.covered).toBe(false)
  expect(result.reasons.slice(1)).toEqual([
    { code: 'excluded', values: { cause: 'glass' } },
    { code: 'excluded', values: { cause: 'set-up' } },
  ])
})

test('after the end and excluded both reasons are told', () => {
  expect(codes({ on: '2027-02-01', causes: ['glass'] })).toEqual(['ended', 'excluded'])
})

test('before it begins nothing is covered', () => {
  expect([cover({ on: '2026-01-09' }).covered, codes({ on: '2026-01-09' })]).toEqual([false, ['notBegun']])
})

test('days in the shop are added, where the shop’s terms say so', () => {
  expect(cover({ stays: [comeback] })).toMatchObject({ lastDay: '2027-02-09', pausedDays: 30 })
  expect(codes({ stays: [comeback] })).toEqual(['paused', 'inTerm'])
  expect(cover({ stays: [comeback], terms: { ...given.terms, pausesInShop: false } }).lastDay).toBe(
    '2027-01-10',
  )
})

test('while the clock is in the shop no day of the term is lost', () => {
  const here: Stay = { from: '2026-12-20', to: null, underWarranty: true }
  const left = (on: string) => cover({ stays: [here], on }).daysLeft
  expect([left('2026-12-20'), left('2027-03-20')]).toEqual([21, 21])
})

test('a comeback restarts the term at hand-over where the terms say so, and only when it was put right under warranty', () => {
  const terms = { ...given.terms, onComeback: 'restart' } as const
  expect(cover({ terms, stays: [comeback] })).toMatchObject({
    began: '2026-03-31',
    lastDay: '2027-03-31',
    pausedDays: 0,
  })
  expect(codes({ terms, stays: [comeback] })).toEqual(['restarted', 'inTerm'])
  expect(cover({ terms, stays: [{ ...comeback, underWarranty: false }] })).toMatchObject({
    began: '2026-01-10',
    pausedDays: 30,
  })
})

test('a visit after the term had ended gives nothing back', () => {
  const late: Stay = { from: '2027-01-11', to: '2027-02-11', underWarranty: true }
  expect(cover({ stays: [late], on: '2027-03-01' })).toMatchObject({
    covered: false,
    lastDay: '2027-01-10',
    pausedDays: 0,
  })
})

test('what happens after the day asked about does not count', () => {
  expect(cover({ stays: [comeback], on: '2026-02-15' }).pausedDays).toBe(0)
})

test('visits out of order, ending before they begin or on no date are problems', () => {
  const stays: Stay[] = [
    { from: '2026-03-10', to: '2026-03-01', underWarranty: true },
    { from: '2026-03-05', to: null, underWarranty: true },
    { from: '2026-04-01', to: '2026-04-31', underWarranty: false },
    { from: '2026-02-01', to: null, underWarranty: false },
  ]
  expect(refusals(warrantyCover({ ...given, stays }))).toEqual([
    'date.notADate stays[2].to',
    'warranty.stayEndsBeforeItBegins stays[0].to',
    'warranty.staysOutOfOrder stays[3].from',
  ])
})

const restart = { ...given.terms, onComeback: 'restart' } as const

test('a comeback put right within the day restarts the term on that very day', () => {
  const stays: Stay[] = [{ from: '2026-03-01', to: '2026-03-01', underWarranty: true }]
  expect(cover({ terms: restart, stays, on: '2026-03-01' }).began).toBe('2026-03-01')
})

test('a clock that is still here, or was handed back only after the day asked about, has restarted nothing yet', () => {
  const here: Stay = { ...comeback, to: null }
  for (const stay of [here, comeback])
    expect(cover({ terms: restart, stays: [stay], on: '2026-03-11' })).toMatchObject({
      began: '2026-01-10',
      pausedDays: 10,
    })
  expect(cover({ terms: restart, stays: [comeback], on: '2026-03-31' }).began).toBe('2026-03-31')
})

test('on the first and on the last day it is in its term, a day before and after it is not', () => {
  const reason = (on: string) => codes({ on })[0]
  expect(['2026-01-09', '2026-01-10', '2027-01-10', '2027-01-11'].map(reason)).toEqual([
    'notBegun',
    'inTerm',
    'inTerm',
    'ended',
  ])
})

test('what is wrong with the term and with the day asked about is named together', () => {
  const terms = { ...given.terms, length: 0, onComeback: 'none' as never }
  expect(refusals(warrantyCover({ ...given, terms, on: 'today' }))).toEqual([
    'date.notADate on',
    'warranty.comeback terms.onComeback',
    'warranty.length length',
  ])
})

test('a visit may begin on the day the one before it ended, not a day earlier, and not while the clock is here', () => {
  const visits = (to: string | null, from: string) =>
    refusals(
      warrantyCover({
        ...given,
        stays: [
          { ...comeback, to },
          { ...comeback, from, to: null },
        ],
      }),
    )
  expect(visits('2026-03-31', '2026-03-31')).toEqual([])
  expect(visits('2026-03-31', '2026-03-30')).toEqual(['warranty.staysOutOfOrder stays[1].from'])
  expect(visits(null, '2026-03-31')).toEqual(['warranty.staysOutOfOrder stays[1].from'])
  expect(visits('2026-03-31', '2026-03-32')).toEqual(['date.notADate stays[1].from'])
})

test('a term that restarts beyond the calendar is a problem', () => {
  const stays: Stay[] = [
    { from: '9799-12-01', to: '9800-01-01', underWarranty: true },
    { from: '9800-01-02', to: null, underWarranty: true },
  ]
  expect(
    refusals(warrantyCover({ ...given, terms: restart, start: '9799-12-01', stays, on: '9800-02-01' })),
  ).toEqual(['date.beyondCalendar start'])
})
