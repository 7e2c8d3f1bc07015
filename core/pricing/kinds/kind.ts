/** What a quantity on a line of this kind counts. */
export type QuantityUnit = 'hour' | 'piece' | 'job'

/** A kind of line on an estimate or invoice. Each place decides by itself which kinds it taxes. */
export interface Kind {
  readonly quantityUnit: QuantityUnit
  /** Whether minutes recorded at the bench are charged on lines of this kind. */
  readonly fromBenchTime: boolean
  /** Whether lines of this kind have a cost to the shop that the price is made from. */
  readonly hasCost: boolean
  /** Whether lines of this kind tell what was done to the clock. */
  readonly tellsWork: boolean
}
