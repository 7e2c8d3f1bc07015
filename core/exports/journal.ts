import { minorDigits } from '../money/currency.ts'
import { type Minor, minorText } from '../money/minor.ts'

/** Money that moves to an account (positive) or from it (negative). */
export interface Posting {
  readonly account: string
  readonly amount: Minor
}

/** One transaction; its postings add up to nothing. */
export interface Transaction {
  readonly on: string
  /** The number of the paper it is written on. */
  readonly code: string
  readonly description: string
  readonly currency: string
  readonly postings: readonly Posting[]
}

/** Text as it may stand in a journal: on one line, without the signs that mean something there. */
const plain = (text: string): string =>
  text
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, ' ')
    .replaceAll(';', ',')
    .replaceAll('|', '/')
    .replace(/[()]/g, '')
    .trim()

/** A name as one part of an account's: colons part accounts, and it never begins with a sign that has a meaning. */
export const accountPart = (text: string): string =>
  plain(text)
    .replaceAll(':', '-')
    .replace(/^[[\]*!]+/, '') || '-'

/** `1000.00 GBP`: how a currency is written, with its decimal mark even where it has no places. */
function commodity(currency: string): string {
  const digits = minorDigits(currency)
  if (digits === undefined) throw new RangeError(`not a currency: ${currency}`)
  return `commodity 1000.${'0'.repeat(digits)} ${currency}`
}

/** The head of a plain-text journal: every currency and account that is used in it, declared. */
export const journalHead = (currencies: readonly string[], accounts: readonly string[]): string =>
  [
    'decimal-mark .',
    '',
    ...currencies.map(commodity),
    '',
    ...accounts.map(account => `account ${account}`),
    '',
    '',
  ].join('\n')

/** One transaction as text, postings of nothing left out. */
export function transactionText({ on, code, description, currency, postings }: Transaction): string {
  const lines = postings
    .filter(({ amount }) => amount !== 0)
    .map(({ account, amount }) => `    ${account}  ${minorText(amount, currency)} ${currency}`)
  return lines.length === 0
    ? ''
    : `${[`${on} (${plain(code)}) ${plain(description)}`, ...lines].join('\n')}\n\n`
}
