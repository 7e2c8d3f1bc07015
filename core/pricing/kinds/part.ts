import type { Kind } from './kind.ts'

/** A part fitted, from the stores or bought in. */
export const part = {
  quantityUnit: 'piece',
  fromBenchTime: false,
  hasCost: true,
  tellsWork: true,
} as const satisfies Kind
