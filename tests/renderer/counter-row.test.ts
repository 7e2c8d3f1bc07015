import { expect, test } from 'vitest'
import { minor } from '../../core/money/minor.ts'
import { en } from '../../core/words/en/index.ts'
import { formats } from '../../core/words/format.ts'
import { secondLine } from '../../renderer/counter/counter-row.ts'

const write = formats({ locale: 'en-GB', timeZone: 'Europe/London', currency: 'GBP' })

const row: Parameters<typeof secondLine>[0] = {
  id: 1,
  number: 2207,
  owner: { id: 1, name: 'Pell, Rosamund' },
  clock: { id: 1, form: 'wall', maker: '', serial: '', trains: 1, duration: '8-day', dial: 'other' },
  fault: 'Stops at the quarter.',
  group: 'in-hand',
  stage: 'on-the-bench',
  notches: 4,
  waitingFor: null,
  toSend: false,
  partsIn: false,
  covered: false,
  sinceOn: '2027-03-01',
  estimatedOn: null,
  late: false,
  uncollected: false,
  toldAt: null,
  estimate: {
    version: 2,
    totalMinor: minor(18400),
    sentAt: '2027-02-26T10:00:00.000Z',
    validUntil: '2027-03-21',
  },
  belongings: [{ item: 'key', position: '', count: 1 }],
  toPayMinor: minor(18400),
  amountIs: 'agreed',
}

const said = (change: Partial<typeof row>) => secondLine({ ...row, ...change }, en, write)

test('a clock in hand shows its fault', () => {
  expect(said({})).toBe('Stops at the quarter.')
})

test('a clock to collect shows whether its owner was told, and what goes back with it', () => {
  expect(said({ group: 'to-collect' })).toBe('owner not told yet · winding key')
  expect(said({ group: 'to-collect', toldAt: '2027-03-03T09:00:00.000Z' })).toBe(
    'owner told 3 Mar 2027, 09:00 · winding key',
  )
})

test('a clock that waits for its owner’s word shows the estimate it hangs on', () => {
  expect(said({ group: 'awaiting-word' })).toBe('estimate 2, valid to 21 Mar · Stops at the quarter.')
})

test('an estimate that was not sent is not shown as out', () => {
  const estimate = { version: 1, totalMinor: minor(1), sentAt: null, validUntil: null }
  expect(said({ group: 'to-send', estimate })).toBe('Stops at the quarter.')
  expect(said({ group: 'late', estimate })).toBe('Stops at the quarter. · estimate 1 written, not sent')
})

test('a comeback says whether the warranty covers it', () => {
  expect(said({ group: 'comeback', covered: true })).toBe('covered by the warranty · Stops at the quarter.')
  expect(said({ group: 'comeback' })).toBe('came back, not covered · Stops at the quarter.')
})

test('an uncollected clock says so first', () => {
  expect(said({ group: 'to-collect', uncollected: true })).toMatch(/^long uncollected · /)
})
