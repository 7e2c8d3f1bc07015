import type { WorkingStep } from '../papers/contents.ts'
import type { PriceLine } from './price-input.ts'

/** How a line's net came about, as steps a person can read: so much of it at so much each. */
export const lineWorking = ({ kind, quantity, unit }: PriceLine): WorkingStep[] =>
  kind === 'labour'
    ? [{ code: 'hoursAtRate', values: { hours: quantity, rate: unit } }]
    : quantity === '1'
      ? []
      : [{ code: 'piecesAtPrice', values: { quantity, unit } }]
