import { fitsOn, type PaperSize } from '../../core/papers/sizes.ts'
import type { AnyContents } from '../../core/papers/working.ts'
import type { Words } from '../../core/words/en/index.ts'
import { flow, flowSlip } from './kit/flow.ts'
import { Sheet } from './kit/sheet.ts'
import { desk, type Photographs } from './parts/speech.ts'
import { planFor } from './registry.ts'

/** On which paper, and in whose words. */
export interface PaperOptions {
  readonly size: PaperSize
  readonly words: Words
  /** The bytes of a photograph, where they are at hand. */
  readonly photographs?: Photographs
  /** Drawn again, not the paper as it was issued: the file says so of itself. */
  readonly again?: boolean
}

const none: Photographs = () => undefined

/**
 * The paper as a tagged PDF. Equal contents, size, words and photographs give equal bytes, whatever was printed before. Throws a
 * RangeError for a size the paper does not come on: ask `fitsOn` first.
 */
export async function renderPaper(
  contents: AnyContents,
  { size, words, photographs = none, again = false }: PaperOptions,
): Promise<Buffer> {
  if (!fitsOn(contents.kind, size)) throw new RangeError(`${contents.kind} does not come on ${size}`)
  const plan = planFor(contents)
  const title = plan.title(contents, words)
  const { shop, language, issuedOn } = contents
  const about = again ? { subject: words.papers.drawnAgain } : {}
  const sheet = new Sheet({ size, title, author: shop.name, language, issuedOn, ...about })
  const d = desk(sheet, contents, words, photographs)
  flow(sheet, plan.sections(d, contents, title))
  const slip = plan.slip?.(d, contents, title)
  if (slip) flowSlip(sheet, slip.cut, slip.sections)
  return sheet.finish({
    continued: words.papers.continued(title),
    foot: [shop.name, title].join(' · '),
    pageOf: words.papers.pageOf,
  })
}
