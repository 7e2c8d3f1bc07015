import { minorDigits } from '../money/currency.ts'
import type { Minor } from '../money/minor.ts'

/** Where and in which money the shop works. */
export interface FormatSettings {
  /** BCP 47, such as `en-GB`. */
  readonly locale: string
  /** IANA name, such as `Europe/London`. */
  readonly timeZone: string
  /** ISO 4217, such as `GBP`. */
  readonly currency: string
}

/** How figures and dates are written, on papers and on screens alike. */
export type Formats = ReturnType<typeof formats>

/** The exact decimal text of an amount in major units: 1205 with two digits is `12.05`. No float comes between. */
export function majorText(amount: Minor, digits: number): `${number}` {
  const sign = amount < 0 ? '-' : ''
  const figures = String(Math.abs(amount)).padStart(digits + 1, '0')
  const whole = figures.slice(0, figures.length - digits)
  const text = digits === 0 ? whole : `${whole}.${figures.slice(-digits)}`
  return `${sign}${text}` as `${number}`
}

/** A locale's hyphen standing for minus becomes the real sign, as wide as a figure. */
const written = (format: Intl.NumberFormat, value: number | `${number}`): string =>
  format
    .formatToParts(value)
    .map(part => (part.type === 'minusSign' ? part.value.replace('-', '−') : part.value))
    .join('')

/** A civil date as the instant its day begins in UTC, to be written in UTC: no zone can move it to another day. */
const civilInstant = (civil: string) => new Date(`${civil}T00:00:00Z`)

/** Seconds as minutes (and hours) and seconds, `2:10` or `1:02:10`, from a whole number that is not negative. */
const clockText = (seconds: number): string => {
  const two = (n: number) => String(n).padStart(2, '0')
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60]
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`
}

const numberFormats = ({ locale, currency }: FormatSettings) => {
  const digits = minorDigits(currency)
  if (digits === undefined) throw new RangeError(`not a currency with minor units: ${currency}`)
  const exact = { minimumFractionDigits: digits, maximumFractionDigits: digits } as const
  return {
    digits,
    money: new Intl.NumberFormat(locale, { style: 'currency', currency, ...exact }),
    amount: new Intl.NumberFormat(locale, exact),
    unitPrice: new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: 20 }),
    quantity: new Intl.NumberFormat(locale, { maximumFractionDigits: 20 }),
    number: new Intl.NumberFormat(locale, { maximumFractionDigits: 6 }),
    percent: new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 20 }),
    seconds: new Intl.NumberFormat(locale, { maximumFractionDigits: 1, signDisplay: 'exceptZero' }),
  }
}

const dateFormats = ({ locale, timeZone }: FormatSettings) => ({
  short: new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', timeZone: 'UTC' }),
  medium: new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' }),
  full: new Intl.DateTimeFormat(locale, { dateStyle: 'full', timeZone: 'UTC' }),
  month: new Intl.DateTimeFormat(locale, { month: 'long', year: 'numeric', timeZone: 'UTC' }),
  weekday: new Intl.DateTimeFormat(locale, { weekday: 'long', timeZone: 'UTC' }),
  instant: new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short', timeZone }),
})

/**
 * Writers for one shop's figures and dates. Pure: locale, zone and currency are given, nothing is read from the machine.
 * Throws a RangeError for a locale, zone or currency that does not exist: settings are checked before they get here.
 */
export function formats(settings: FormatSettings) {
  const numbers = numberFormats(settings)
  const dates = dateFormats(settings)
  const seconds = (value: number): string => {
    const whole = Math.round(Math.abs(value))
    if (whole < 100) return `${written(numbers.seconds, value)} s`
    return `${value < 0 ? '−' : '+'}${clockText(whole)}`
  }
  return {
    /** An amount with its currency: `£412.60`. */
    money: (amount: Minor) => written(numbers.money, majorText(amount, numbers.digits)),
    /** An amount for a column of figures, without a symbol: `1,296.35`. */
    amount: (amount: Minor) => written(numbers.amount, majorText(amount, numbers.digits)),
    /** A civil date without its year: `4 Mar`. */
    shortDate: (civil: string) => dates.short.format(civilInstant(civil)),
    /** A civil date: `4 Mar 2027`. */
    date: (civil: string) => dates.medium.format(civilInstant(civil)),
    /** A civil date with its weekday: `Thursday 4 March 2027`. */
    longDate: (civil: string) => dates.full.format(civilInstant(civil)),
    /** A month, `2027-03`: `March 2027`. */
    month: (month: string) => dates.month.format(civilInstant(`${month}-01`)),
    /** The weekday of a civil date: `Thursday`. */
    weekday: (civil: string) => dates.weekday.format(civilInstant(civil)),
    /** An ISO instant as date and time in the shop's zone: `4 Mar 2027, 09:10`. */
    instant: (iso: string) => dates.instant.format(new Date(iso)),
    /** A plain number, at most six decimals. */
    number: (value: number) => written(numbers.number, value),
    /** A percent rate given as text, `8.875`, exactly: `8.875%`. */
    percent: (rate: string) => written(numbers.percent, `${rate}e-2` as `${number}`),
    /** A typed decimal quantity, `2.50`, exactly: `2.5`. */
    quantity: (text: string) => written(numbers.quantity, text as `${number}`),
    /** A typed unit price in major units, `0.0088`, with all its decimals and no symbol. */
    unitPrice: (text: string) => written(numbers.unitPrice, text as `${number}`),
    /** Seconds fast (+) or slow (−): `−5 s`, and from a hundred seconds on in minutes, `+2:10`. */
    signedSeconds: seconds,
  }
}
