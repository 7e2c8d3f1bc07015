/** One dimension of a part in the unit it was measured in: stored as told, never converted on the way in. */
export interface PartSize {
  readonly dimension: Dimension
  /** Decimal text. */
  readonly value: string
  readonly unit: 'mm' | 'in'
}

/** Dimensions parts are told apart by; a mainspring is height × thickness × length with its barrel. */
export const dimensions = [
  'height',
  'thickness',
  'length',
  'barrel',
  'bore',
  'outside',
  'width',
  'diameter',
] as const
export type Dimension = (typeof dimensions)[number]
