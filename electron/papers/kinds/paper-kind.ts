import type { PaperContents } from '../../../core/papers/contents.ts'
import type { Words } from '../../../core/words/en/index.ts'
import type { Block, Section } from '../kit/flow.ts'
import type { Desk } from '../parts/speech.ts'

/** What makes a paper of one kind: the document's title, and what is laid on the sheet in order. */
export interface PaperKindPlan<C extends PaperContents> {
  readonly title: (contents: C, words: Words) => string
  readonly sections: (d: Desk, contents: C, title: string) => readonly Section[]
  /** A part to be torn off along a cut line, at the foot of the page where it fits. */
  readonly slip?: (
    d: Desk,
    contents: C,
    title: string,
  ) => { readonly cut: Block; readonly sections: readonly Section[] }
}
