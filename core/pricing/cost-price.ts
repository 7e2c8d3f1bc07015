import { gather, gatherList, whenGood } from '../checked.ts'
import {
  addDecimals,
  type Decimal,
  decimalText,
  parseNonNegative,
  subtractDecimals,
} from '../decimal/decimal.ts'
import { currencyDigits } from '../money/minor.ts'
import { times } from '../money/scaled.ts'
import { bad, type Checked, good, problem } from '../problems.ts'
import type { MarkupTier, PriceBook } from './price-book.ts'
import { parsePrice, type Quoted, quoted } from './quoted.ts'

/**
 * The price of one part by its cost (decimal text in major units, of any precision) and the first tier it falls in.
 * Problems: `book.noMarkup` (no tier reaches so far), `book.markupOrder`, figures that are none.
 */
export function partPrice({ markup }: PriceBook, cost: string, currency: string): Checked<Quoted> {
  const figures = gather({ cost: parsePrice(cost, 'cost'), tiers: parsedTiers(markup) })
  return whenGood(figures, ({ cost: paid, tiers }) => {
    const tier = tiers.find(({ upTo }) => upTo === null || atMost(paid, upTo))
    return tier ? markedUp(paid, tier.percent, currency, 'markup') : bad([problem('book.noMarkup', 'cost')])
  })
}

/** What outside work that cost the shop so much is charged on at. */
export function outsidePrice({ outsidePercent }: PriceBook, cost: string, currency: string): Checked<Quoted> {
  const figures = gather({
    cost: parsePrice(cost, 'cost'),
    percent: parseNonNegative(outsidePercent, 'outsidePercent'),
  })
  return whenGood(figures, ({ cost: paid, percent }) => markedUp(paid, percent, currency, 'outsideMarkup'))
}

interface Tier {
  readonly upTo: Decimal | null
  readonly percent: Decimal
}

/** The tiers in figures: `book.markupOrder` unless each reaches higher than the one before it. */
export function parsedTiers(markup: readonly MarkupTier[]): Checked<Tier[]> {
  const tiers = gatherList<Tier>(
    markup.map(({ upToCost, percent }, i) =>
      gather({
        upTo: upToCost === null ? good(null) : parsePrice(upToCost, `markup[${i}].upToCost`),
        percent: parseNonNegative(percent, `markup[${i}].percent`),
      }),
    ),
  )
  return whenGood(tiers, list => {
    const falls = list.findIndex(({ upTo }, i) => i > 0 && !rises(list[i - 1]?.upTo ?? null, upTo))
    return falls < 0 ? good(list) : bad([problem('book.markupOrder', `markup[${falls}].upToCost`)])
  })
}

const rises = (before: Decimal | null, after: Decimal | null): boolean =>
  before !== null && (after === null || !atMost(after, before))

const atMost = (a: Decimal, b: Decimal): boolean => subtractDecimals(a, b).units <= 0n

function markedUp(
  cost: Decimal,
  percent: Decimal,
  currency: string,
  code: 'markup' | 'outsideMarkup',
): Checked<Quoted> {
  const { units, scale } = addDecimals({ units: 100n, scale: 0 }, percent)
  return whenGood(currencyDigits(currency), digits =>
    quoted(times(cost, { units, scale: scale + 2 }, digits), [
      { code, values: { cost: decimalText(cost), percent: decimalText(percent) } },
    ]),
  )
}
