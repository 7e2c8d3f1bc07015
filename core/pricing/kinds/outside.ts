import type { Kind } from './kind.ts'

/** Work sent out to another craftsman and charged on. */
export const outside = {
  quantityUnit: 'job',
  fromBenchTime: false,
  hasCost: true,
  tellsWork: true,
} as const satisfies Kind
