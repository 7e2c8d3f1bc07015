import { type Minor, minor } from '../money/minor.ts'

/** A part as it counts for the stock's worth. */
export interface StockFact<K extends string> {
  readonly kind: K
  readonly inStock: number
  readonly unitCostMinor: Minor
}

/** The stock of one kind of part. */
export interface StockRow<K extends string> {
  readonly key: K
  readonly parts: number
  readonly pieces: number
  /** At the cost on record of each part. */
  readonly valueMinor: Minor
}

/** What the stock is worth at cost by kind of part, the greatest worth first; kinds of which nothing is there are left out. */
export const stockWorth = <K extends string>(parts: readonly StockFact<K>[]): StockRow<K>[] =>
  [
    ...Map.groupBy(
      parts.filter(part => part.inStock > 0),
      part => part.kind,
    ),
  ]
    .map(([key, rows]) => ({
      key,
      parts: rows.length,
      pieces: rows.reduce((sum, part) => sum + part.inStock, 0),
      valueMinor: minor(rows.reduce((sum, part) => sum + part.inStock * part.unitCostMinor, 0)),
    }))
    .sort((a, b) => b.valueMinor - a.valueMinor || (a.key < b.key ? -1 : 1))
