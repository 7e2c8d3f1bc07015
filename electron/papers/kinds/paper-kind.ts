import type { AnyContents } from '../../../core/papers/working.ts'
import type { Words } from '../../../core/words/en/index.ts'
import type { Block, Section } from '../kit/flow.ts'
import type { Desk } from '../parts/speech.ts'

/** A part to be torn off along a cut line, at the foot of the page where it fits. */
export interface Slip {
  readonly cut: Block
  readonly sections: readonly Section[]
}

/** What makes a paper of one kind: the document's title, and what is laid on the sheet in order. */
export interface PaperKindPlan<C extends AnyContents> {
  readonly title: (contents: C, words: Words) => string
  readonly sections: (d: Desk, contents: C, title: string) => readonly Section[]
  readonly slip?: (d: Desk, contents: C, title: string) => Slip | undefined
}
