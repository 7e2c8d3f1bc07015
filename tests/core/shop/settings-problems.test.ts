import { describe, expect, test } from 'vitest'
import { openingSettings } from '../../../core/shop/defaults.ts'
import { type SomeSettings, settingsProblems } from '../../../core/shop/settings-problems.ts'

const settings = openingSettings({
  name: 'Thornbury Clock Bench',
  addressLines: ['4 Weir Lane'],
  country: 'GB',
  locale: 'en-GB',
  timeZone: 'Europe/London',
  currency: 'GBP',
  tax: { code: 'VAT', rate: '20' },
  benchRate: '48.00',
})

const found = (some: SomeSettings, currency = 'GBP') =>
  settingsProblems(some, currency).map(({ code, field }) => `${code} ${field}`)

describe('settings that could not be worked by', () => {
  test('a new shop’s settings have nothing wrong with them', () => {
    expect(found(settings)).toEqual([])
  })

  test('hours must end after they begin, may not run into one another, and cannot be none at all', () => {
    const week = [
      { day: 1, from: '09:00', to: '12:30' },
      { day: 1, from: '12:00', to: '17:00' },
    ]
    expect(found({ hours: { week } })).toEqual(['calendar.overlap hours.week[1]'])
    expect(found({ hours: { week: [{ day: 2, from: '17:00', to: '09:00' }] } })).toEqual([
      'calendar.endsBeforeItBegins hours.week[0].to',
    ])
    expect(found({ hours: { week: [] } })).toEqual(['calendar.closedAllWeek hours.week'])
  })

  test('a tax has a rate of nothing or more, and stands once on a kind of line', () => {
    const part = [
      { code: 'VAT', rate: '-20' },
      { code: 'VAT', rate: '5' },
    ]
    const tax = { ...settings.tax, byKind: { ...settings.tax.byKind, part } }
    expect(found({ tax })).toEqual([
      'number.negative tax.byKind.part[0].rate',
      'price.taxTwice tax.byKind.part[1].code',
    ])
  })

  test('the price book has one entry of hours for the same work on the same clock, and tiers that rise', () => {
    const { prices } = settings
    const hours = [...prices.hours, { work: 'overhaul', form: null, trains: 2, hours: '-3' }] as const
    const markup = [
      { upToCost: null, percent: '40' },
      { upToCost: '20', percent: '100' },
    ]
    const callOut = { ...prices.callOut, fee: '-1', perDistance: 'far' }
    expect(found({ prices: { ...prices, hours, markup, callOut } }).sort()).toEqual([
      `book.hoursTwice prices.hours[${prices.hours.length}].work`,
      'book.markupOrder prices.markup[1].upToCost',
      'number.negative prices.callOut.fee',
      `number.negative prices.hours[${prices.hours.length}].hours`,
      'number.notADecimal prices.callOut.perDistance',
    ])
  })

  test('amounts are those of the shop’s currency, nothing or more', () => {
    expect(found({ prices: { ...settings.prices, benchRate: '-1', estimateFee: '5.001' } })).toEqual([
      'number.negative prices.benchRate',
      'money.tooPrecise prices.estimateFee',
    ])
    const estimate = { validDays: 30, overrunPercent: '-10', overrunAmount: '-50' }
    expect(found({ estimate })).toEqual([
      'number.negative estimate.overrunPercent',
      'number.negative estimate.overrunAmount',
    ])
    expect(found({ prices: { ...settings.prices, benchRate: '5000', estimateFee: '5.5' } }, 'JPY')).toEqual([
      'money.tooPrecise prices.estimateFee',
    ])
  })

  test('a warranty runs for at most a hundred years', () => {
    const terms = { ...settings.warranty.terms, repair: { length: 1201, unit: 'months' as const } }
    expect(found({ warranty: { ...settings.warranty, terms } })).toEqual([
      'warranty.length warranty.terms.repair.length',
    ])
  })

  test('a stage of a run-in is counted in winds or in days and has an end', () => {
    const policy = { stages: [{ name: 'in the case', winds: 1, days: 3 }], readingEveryDays: 0 }
    expect(found({ runIn: { ...settings.runIn, '8-day': policy } })).toEqual([
      'runIn.readingEveryDays runIn.8-day.readingEveryDays',
      'runIn.windsOrDays runIn.8-day.stages[0]',
    ])
  })
})
