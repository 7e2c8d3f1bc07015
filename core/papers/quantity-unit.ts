import { lineKinds } from '../pricing/kinds/index.ts'
import type { QuantityUnit } from '../pricing/kinds/kind.ts'
import type { PaperLine } from './contents.ts'

/** What a line's quantity counts: what its kind does, but one sum where it credits an amount of another line. */
export const quantityUnitOf = ({ kind, credits }: Pick<PaperLine, 'kind' | 'credits'>): QuantityUnit =>
  credits?.by === 'amount' ? 'job' : lineKinds[kind].quantityUnit
