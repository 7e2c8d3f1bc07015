import type { AnyKind } from '../../core/papers/kinds.ts'
import { fitsOn, type PaperSize } from '../../core/papers/sizes.ts'
import { refuse } from '../rows/refusal.ts'

/** The size, where the paper comes on it; else a refusal that names those it does come on. */
export const fitting = (kind: AnyKind, size: PaperSize): PaperSize =>
  fitsOn(kind, size) ? size : refuse('paper.size', 'size', { kind, size })
