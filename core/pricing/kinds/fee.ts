import type { Kind } from './kind.ts'

/** A fee: assessment, call-out, storage, a minimum charge. */
export const fee = {
  quantityUnit: 'job',
  fromBenchTime: false,
  hasCost: false,
  tellsWork: false,
} as const satisfies Kind
