import { addDecimals, type Decimal, decimalText, tenTo } from '../decimal/decimal.ts'
import { type Fraction, sumFractions } from '../decimal/fraction.ts'
import { apportion } from '../money/apportion.ts'
import { divRound, roundFraction } from '../money/div-round.ts'
import type { TaxPart, TaxRules } from './price-input.ts'

/** A tax with its rate in percent, exact. */
export interface RatedTax {
  readonly code: string
  readonly rate: Decimal
}

/** An amount in minor units (a line, or a document allowance or charge) and the taxes on it. */
export interface TaxableItem {
  readonly amount: bigint
  readonly taxes: readonly RatedTax[]
}

/** One group of equal code and rate, in minor units. */
export interface TaxGroup {
  readonly code: string
  /** Percent, the shortest decimal text. */
  readonly rate: string
  readonly taxable: bigint
  readonly tax: bigint
}

/** The groups in the order their first item comes, and the amount without tax of each item. */
export interface Taxed {
  readonly groups: readonly TaxGroup[]
  readonly nets: readonly bigint[]
}

interface Share {
  readonly index: number
  readonly amount: bigint
  readonly exact: Fraction
}

interface Charged {
  readonly tax: bigint
  /** The tax in whole minor units that each item of the group carries. */
  readonly parts: readonly bigint[]
}

/**
 * The tax on all items. Exclusive: amount × rate ÷ 100 (EN 16931 BR-CO-17). Inclusive: amount × rate ÷ (100 + all
 * the item's rates), and the net is what is left, so that net + tax = gross exactly; a group's rounded tax is
 * apportioned over its items, so that it is exact for the item, the group and the document alike.
 */
export function taxed(
  items: readonly TaxableItem[],
  rules: TaxRules,
  partOf: readonly TaxPart[] = [],
): Taxed {
  const rated = rules.aggregate ? items.map(aggregated) : items
  const nets = rated.map(item => item.amount)
  const charged = [...sharesByGroup(rated, rules.inclusive)].map(([key, shares]) => {
    const charge = chargeOf(key, shares, rules, partOf)
    if (rules.inclusive)
      charge.parts.forEach((part, i) => {
        const index = shares[i]?.index ?? 0
        nets[index] = (nets[index] ?? 0n) - part
      })
    return { key, shares, tax: charge.tax }
  })
  return {
    nets,
    groups: charged.map(({ key, shares, tax }) => ({ ...group(key), taxable: taxable(shares, nets), tax })),
  }
}

/** What an item bears in one group, in minor units. */
export interface ItemTax {
  readonly index: number
  readonly code: string
  readonly rate: string
  readonly tax: bigint
}

/** Each group's tax shared out over its items, so that the parts add up to the group's tax exactly. */
export function taxByItem(
  items: readonly TaxableItem[],
  rules: TaxRules,
  partOf: readonly TaxPart[] = [],
): ItemTax[] {
  const rated = rules.aggregate ? items.map(aggregated) : items
  return [...sharesByGroup(rated, rules.inclusive)].flatMap(([key, shares]) => {
    const { tax, parts } = chargeOf(key, shares, rules, partOf)
    const exact = shares.map(share => share.exact)
    const borne = parts.length > 0 ? parts : apportion(tax, exact)
    return shares.map(({ index }, i) => ({ ...group(key), index, tax: borne[i] ?? 0n }))
  })
}

const taxable = (shares: readonly Share[], nets: readonly bigint[]): bigint =>
  shares.reduce((sum, { index }) => sum + (nets[index] ?? 0n), 0n)

/** What is charged on each group by code and rate, before any tax is taken out of it. */
export function groupAmounts(items: readonly TaxableItem[], rules: TaxRules) {
  const rated = rules.aggregate ? items.map(aggregated) : items
  return [...sharesByGroup(rated, rules.inclusive)].map(([key, shares]) => ({
    ...group(key),
    amount: amountOf(shares),
  }))
}

const amountOf = (shares: readonly Share[]): bigint => shares.reduce((sum, { amount }) => sum + amount, 0n)

function chargeOf(
  key: string,
  shares: readonly Share[],
  rules: TaxRules,
  partOf: readonly TaxPart[],
): Charged {
  const part = partOf.find(one => `${one.rate} ${one.code}` === key && one.whole.amount !== 0)
  if (part) return chargedInPart(shares, rules, part)
  return rules.basis === 'line' ? chargedByItem(shares, rules) : chargedOnce(shares, rules)
}

/** Up to here so much of the whole is taken back, and so the like share of its tax; less what was taken back of it before. */
function chargedInPart(shares: readonly Share[], { mode }: TaxRules, { whole, before }: TaxPart): Charged {
  const taken = BigInt(before.amount) - amountOf(shares)
  const tax = BigInt(before.tax) - divRound(BigInt(whole.tax) * taken, BigInt(whole.amount), mode)
  return { tax, parts: apportion(tax, scaled(shares, tax)) }
}

/** Shares in the same proportion that add up to `tax`. */
function scaled(shares: readonly Share[], tax: bigint): Fraction[] {
  const sum = amountOf(shares)
  if (sum === 0n) return shares.map((_, i) => ({ n: i === 0 ? tax : 0n, d: 1n }))
  return shares.map(({ amount }) => ({ n: tax * amount, d: sum }))
}

const chargedByItem = (shares: readonly Share[], { mode }: TaxRules): Charged => {
  const parts = shares.map(({ exact }) => roundFraction(exact, mode))
  return { parts, tax: parts.reduce((sum, part) => sum + part, 0n) }
}

const chargedOnce = (shares: readonly Share[], { mode, inclusive }: TaxRules): Charged => {
  const exact = shares.map(share => share.exact)
  const tax = roundFraction(sumFractions(exact), mode)
  return { tax, parts: inclusive ? apportion(tax, exact) : [] }
}

/** The item under one tax at the sum of its rates; codes are sorted so that their order on the line does not matter. */
function aggregated(item: TaxableItem): TaxableItem {
  if (item.taxes.length < 2) return item
  const code = [...new Set(item.taxes.map(tax => tax.code))].sort().join('+')
  const rate = item.taxes.map(tax => tax.rate).reduce(addDecimals)
  return { amount: item.amount, taxes: [{ code, rate }] }
}

/** What makes two taxes one group: equal code and equal rate, however the rate is written. */
export const taxGroup = ({ code, rate }: RatedTax): string => `${decimalText(rate)} ${code}`

const group = (key: string) => {
  const space = key.indexOf(' ')
  return { rate: key.slice(0, space), code: key.slice(space + 1) }
}

function sharesByGroup(items: readonly TaxableItem[], inclusive: boolean): Map<string, Share[]> {
  const groups = new Map<string, Share[]>()
  items.forEach((item, index) => {
    for (const tax of item.taxes) {
      const key = taxGroup(tax)
      const shares = groups.get(key) ?? []
      groups.set(key, shares)
      shares.push({ index, amount: item.amount, exact: exactTax(item, tax.rate, inclusive) })
    }
  })
  return groups
}

function exactTax({ amount, taxes }: TaxableItem, rate: Decimal, inclusive: boolean): Fraction {
  if (!inclusive) return { n: amount * rate.units, d: 100n * tenTo(rate.scale) }
  const all = taxes.map(tax => tax.rate).reduce(addDecimals, { units: 100n, scale: 0 })
  return { n: amount * rate.units * tenTo(all.scale - rate.scale), d: all.units }
}
