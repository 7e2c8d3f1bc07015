import type { PartSize } from '../../core/stores/part-size.ts'
import type { PartKind, SpringEnd } from '../../core/vocabulary/work.ts'
import type { Words } from '../../core/words/en/index.ts'

interface Sized {
  readonly kind: PartKind
  readonly name: string
  readonly ends: SpringEnd | ''
  readonly sizes: readonly PartSize[]
}

/** The sizes as they were measured: `height 19 mm, thickness 0.45 mm`. */
export const sizeWords = (words: Words, sizes: readonly PartSize[]): string =>
  sizes
    .map(({ dimension, value, unit }) => `${words.stores.dimensions[dimension]} ${value} ${unit}`)
    .join(', ')

/** A part in one line: its name and its sizes. */
export const partWords = (words: Words, { name, sizes, ends }: Sized): string =>
  [name, sizeWords(words, sizes), ends && words.springEnds[ends]].filter(Boolean).join(' · ')
