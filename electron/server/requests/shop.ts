import { win32 } from 'node:path'
import { Hono } from 'hono'
import { z } from 'zod'
import { minorDigits } from '../../../core/money/currency.ts'
import { roundingModes } from '../../../core/money/div-round.ts'
import { goings } from '../../../core/run-in/limits.ts'
import { openingBackups, openingPrices } from '../../../core/shop/defaults.ts'
import { taxDues } from '../../../core/tax/due.ts'
import { durations, forms } from '../../../core/vocabulary/clock.ts'
import { exclusions, placeKinds, scopes, works } from '../../../core/vocabulary/work.ts'
import * as book from '../../../db/books/shop.ts'
import { body } from './body.ts'
import {
  civilDate,
  count,
  decimal,
  keyOf,
  list,
  oneOf,
  optional,
  required,
  saying,
  seenStamp,
} from './fields.ts'
import { type Env, perform } from './perform.ts'

const understood = (test: () => unknown): boolean => {
  try {
    test()
    return true
  } catch {
    return false
  }
}

const shop = z.strictObject({
  name: required(),
  addressLines: list(required(), 6),
  phone: optional(40),
  email: optional(),
  taxNumber: optional(40),
})

const place = z.strictObject({
  country: z.string().regex(/^[A-Z]{2}$/),
  locale: required(35).refine(v => understood(() => new Intl.Locale(v)), saying('input.notALocale')),
  timeZone: required(60).refine(
    v => understood(() => new Intl.DateTimeFormat('en', { timeZone: v })),
    saying('input.notAZone'),
  ),
  currency: z.string().refine(v => minorDigits(v) !== undefined, saying('input.notACurrency')),
  paper: oneOf(['a4', 'letter']),
  units: oneOf(['mm', 'in']),
})

const clockTime = z.string().max(5)
const week = list(z.strictObject({ day: z.int(), from: clockTime, to: clockTime }), 42, 1)

const taxes = list(z.strictObject({ code: required(20), rate: decimal }), 10)
const tax = z.strictObject({
  basis: oneOf(['line', 'group']),
  mode: oneOf(roundingModes),
  inclusive: z.boolean(),
  aggregate: z.boolean().optional(),
  byKind: z.strictObject({ labour: taxes, part: taxes, outside: taxes, fee: taxes }),
  due: oneOf(taxDues),
})
const hours = z.strictObject({
  work: oneOf(works),
  form: keyOf(forms).nullable(),
  trains: z.literal([1, 2, 3]).nullable(),
  hours: decimal,
})
const prices = z.strictObject({
  benchRate: decimal,
  minimumCharge: decimal,
  hours: list(hours, 300),
  markup: list(z.strictObject({ upToCost: decimal.nullable(), percent: decimal }), 30),
  outsidePercent: decimal,
  rushPercent: decimal,
  callOut: z.strictObject({
    fee: decimal,
    freeDistance: decimal,
    perDistance: decimal,
    eachFurtherClock: decimal,
  }),
  estimateFee: decimal,
})
/** A shop is opened with its bench rate at least; the rest of its book begins as a new shop's does. */
const begun = openingPrices('0')
const openingBook = prices.extend({
  minimumCharge: decimal.default(begun.minimumCharge),
  hours: prices.shape.hours.default([...begun.hours]),
  markup: prices.shape.markup.default([...begun.markup]),
  outsidePercent: decimal.default(begun.outsidePercent),
  rushPercent: decimal.default(begun.rushPercent),
  callOut: prices.shape.callOut.default({ ...begun.callOut }),
  estimateFee: decimal.default(begun.estimateFee),
})

const cash = z.strictObject({ step: decimal })
const eInvoice = z.strictObject({ on: z.boolean() })

const term = z.strictObject({ length: z.int(), unit: oneOf(['months', 'days']) }).nullable()
const warranty = z.strictObject({
  startsOn: oneOf(['collection', 'invoice', 'ready']),
  convention: oneOf(['same-date', 'day-before']),
  onComeback: oneOf(['restart', 'continue']),
  pausesInShop: z.boolean(),
  terms: z.record(oneOf(scopes), term),
  exclusions: list(oneOf(exclusions), exclusions.length),
})

/** How long stages and terms may be is core's to say (core/shop/settings-problems.ts). */
const stage = z.strictObject({ name: required(60), winds: z.int().optional(), days: z.int().optional() })
const policy = z.strictObject({ stages: list(stage, 6, 1), readingEveryDays: z.int() })

const privacy = z.strictObject({ keepPapersYears: count(1, 30) })

const backups = z.strictObject({
  automatic: z.boolean(),
  folder: z
    .string()
    .trim()
    .max(1000)
    // Whole on any system: a day book written on one is played on another. Windows' rule takes a leading slash as well.
    .refine(folder => folder === '' || win32.isAbsolute(folder), saying('backup.folderNotWhole')),
  keep: z.strictObject({
    days: count(0, 366),
    weeks: count(0, 520),
    months: count(0, 600),
    years: count(0, 100).nullable(),
  }),
  lateDays: count(1, 60),
})

const groups = {
  shop,
  place,
  hours: z.strictObject({ week }),
  cash,
  tax,
  prices,
  estimate: z.strictObject({ validDays: count(1, 400), overrunPercent: decimal, overrunAmount: decimal }),
  warranty,
  runIn: z.record(oneOf(durations), policy),
  limits: z.record(oneOf(goings), z.strictObject({ perDay: decimal, steady: decimal })),
  collection: z.strictObject({ uncollectedDays: count(1, 3650) }),
  privacy,
  eInvoice,
  backups,
}

/** A shop may be opened without saying these: tax is then due with the invoice, there are no e-invoices, and cash is not rounded. */
const opening = {
  prices: openingBook,
  tax: tax.extend({ due: tax.shape.due.default('invoice') }),
  eInvoice: eInvoice.default({ on: false }),
  cash: cash.default({ step: '0' }),
  privacy: privacy.default({ keepPapersYears: 10 }),
  backups: backups.default(openingBackups),
}

const openInput = z.strictObject({
  settings: z.strictObject({ ...groups, ...opening }),
  person: required(80),
  firstRepairNumber: count(1, 9_999_999).default(1),
})

/** Acts on the shop itself. */
export const shopActs = new Hono<Env>()
  .post('/open', body(openInput), c => perform(c, book.openShop, c.req.valid('json')))
  .post(
    '/changeSettings',
    body(
      z
        .strictObject(groups)
        .partial()
        .extend({ seen: z.partialRecord(keyOf(groups), seenStamp.unwrap()).nullable() })
        .refine(({ seen: _, ...given }) => Object.keys(given).length > 0, saying('input.nothing'))
        .refine(
          ({ seen, ...given }) => seen === null || Object.keys(given).every(group => group in seen),
          saying('input.seenMissing'),
        ),
    ),
    c => perform(c, book.changeSettings, c.req.valid('json')),
  )
  .post('/confirmClock', body(z.strictObject({ today: civilDate })), c =>
    perform(c, book.confirmClock, c.req.valid('json')),
  )
  .post('/addPlace', body(z.strictObject({ name: required(40), kind: oneOf(placeKinds) })), c =>
    perform(c, book.addPlace, c.req.valid('json')),
  )
  .post(
    '/closeOn',
    body(
      z.strictObject({
        days: list(z.strictObject({ onDate: civilDate, name: required(80) }), 400, 1),
      }),
    ),
    c => perform(c, book.closeOn, c.req.valid('json')),
  )
  .post('/openOn', body(z.strictObject({ onDate: civilDate })), c =>
    perform(c, book.openOn, c.req.valid('json')),
  )
