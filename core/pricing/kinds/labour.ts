import type { Kind } from './kind.ts'

/** Time at the bench. */
export const labour = {
  quantityUnit: 'hour',
  fromBenchTime: true,
  hasCost: false,
  tellsWork: true,
} as const satisfies Kind
