import { usualKeeping } from '../backups/kept.ts'
import { usualCashStep } from '../money/cash.ts'
import { openingHours, type PriceBook } from '../pricing/price-book.ts'
import { type Going, goings, type LimitsSetting, usualLimits } from '../run-in/limits.ts'
import { type RunInPolicy, runInDefaults } from '../run-in/policy.ts'
import { type Duration, durations } from '../vocabulary/clock.ts'
import { exclusions } from '../vocabulary/work.ts'
import type { Settings } from './settings.ts'

const openingRunIn = Object.fromEntries(
  durations.map(duration => [duration, runInDefaults[duration].policy]),
) as Record<Duration, RunInPolicy>

const openingLimits = Object.fromEntries(
  goings.map(going => {
    const { perDay, steady } = usualLimits[going]
    return [going, { perDay: String(perDay), steady: String(steady) }]
  }),
) as Record<Going, LimitsSetting>

/** Our own default: copies are made, beside the ledger until the shop has a better place, and told of when two days late. */
export const openingBackups: Settings['backups'] = {
  automatic: true,
  folder: '',
  keep: usualKeeping,
  lateDays: 2,
}

/** What a person must say to open a shop; the rest starts from common practice and is the shop's own to change. */
export interface ShopBasics {
  readonly name: string
  readonly addressLines: readonly string[]
  readonly phone?: string
  /** Under which the shop is registered for the tax. */
  readonly taxNumber?: string
  readonly country: string
  readonly locale: string
  readonly timeZone: string
  readonly currency: string
  /** The tax on all four kinds of line; none when null. Taxability differs from place to place: the shop adjusts it by kind. */
  readonly tax: { readonly code: string; readonly rate: string } | null
  readonly benchRate: string
}

const weekdays = [1, 2, 3, 4, 5].flatMap(day => [
  { day, from: '09:00', to: '12:30' },
  { day, from: '13:00', to: '17:00' },
])

/** Where letters are written on US Letter (ISO 3166 alpha-2); everywhere else A4 (ISO 216). From memory. */
const letterCountries = ['US', 'CA', 'MX', 'CL', 'CO', 'VE', 'PH']

/**
 * The price book a new shop begins with, by its bench rate. Of the hours only those for an overhaul of
 * two and three trains are common practice; nothing is added for rush
 * work, no minimum charged and no fee asked until the shop says so. The markup is a policy of our own: no published
 * figures were found.
 */
export const openingPrices = (benchRate: string): PriceBook => ({
  benchRate,
  minimumCharge: '0',
  hours: openingHours,
  markup: [
    { upToCost: '20', percent: '100' },
    { upToCost: '100', percent: '60' },
    { upToCost: null, percent: '40' },
  ],
  outsidePercent: '20',
  rushPercent: '0',
  callOut: { fee: '0', freeDistance: '0', perDistance: '0', eachFurtherClock: '0' },
  estimateFee: '0',
})

/** Settings a new shop begins with. Common practice, labelled as the shop's own policy on its page; every figure can be changed. */
export function openingSettings(basics: ShopBasics): Settings {
  const taxes = basics.tax ? [basics.tax] : []
  return {
    shop: {
      name: basics.name,
      addressLines: basics.addressLines,
      phone: basics.phone ?? '',
      email: '',
      taxNumber: basics.taxNumber ?? '',
    },
    place: {
      country: basics.country,
      locale: basics.locale,
      timeZone: basics.timeZone,
      currency: basics.currency,
      paper: letterCountries.includes(basics.country) ? 'letter' : 'a4',
      units: basics.country === 'US' ? 'in' : 'mm',
    },
    hours: { week: weekdays },
    cash: { step: usualCashStep(basics.currency, basics.country) },
    tax: {
      basis: 'group',
      mode: 'half-up',
      inclusive: false,
      byKind: { labour: taxes, part: taxes, outside: taxes, fee: taxes },
      due: 'invoice',
    },
    prices: openingPrices(basics.benchRate),
    estimate: { validDays: 30, overrunPercent: '10', overrunAmount: '50' },
    warranty: {
      startsOn: 'collection',
      convention: 'same-date',
      onComeback: 'continue',
      pausesInShop: true,
      terms: {
        overhaul: { length: 12, unit: 'months' },
        service: { length: 12, unit: 'months' },
        repair: { length: 90, unit: 'days' },
        'set-up': null,
        none: null,
      },
      exclusions,
    },
    runIn: openingRunIn,
    limits: openingLimits,
    collection: { uncollectedDays: 90 },
    privacy: { keepPapersYears: 10 },
    eInvoice: { on: false },
    backups: openingBackups,
  }
}
