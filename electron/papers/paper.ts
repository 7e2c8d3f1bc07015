import type { PaperContents } from '../../core/papers/contents.ts'
import type { Words } from '../../core/words/en/index.ts'
import { flow, flowSlip } from './kit/flow.ts'
import { type PaperSize, Sheet } from './kit/sheet.ts'
import { desk } from './parts/speech.ts'
import { planFor } from './registry.ts'

/** On which paper, and in whose words. */
export interface PaperOptions {
  readonly size: PaperSize
  readonly words: Words
}

/** The paper as a tagged PDF. Equal contents, size and words give equal bytes, whatever was printed before. */
export async function renderPaper(contents: PaperContents, { size, words }: PaperOptions): Promise<Buffer> {
  const plan = planFor(contents)
  const title = plan.title(contents, words)
  const { shop, language, issuedOn } = contents
  const sheet = new Sheet({ size, title, author: shop.name, language, issuedOn })
  const d = desk(sheet, contents, words)
  flow(sheet, plan.sections(d, contents, title))
  const slip = plan.slip?.(d, contents, title)
  if (slip) flowSlip(sheet, slip.cut, slip.sections)
  return sheet.finish({
    continued: words.papers.continued(title),
    foot: [shop.name, title].join(' · '),
    pageOf: words.papers.pageOf,
  })
}
