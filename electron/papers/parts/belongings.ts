import type { PaperBelonging } from '../../../core/papers/contents.ts'
import { custodies } from '../../../core/vocabulary/intake.ts'
import type { Block } from '../kit/flow.ts'
import type { RowOptions } from '../kit/row.ts'
import { piece, ruledEntry } from './entry.ts'
import { type Desk, said, sentence } from './speech.ts'

type Named = Pick<PaperBelonging, 'item' | 'description'>

/** What a belonging is called: its word, or of an `other` what was written. */
const thingName = ({ words }: Desk, { item, description }: Named): string =>
  item === 'other' && description ? description : said(words.belongings, item)

/** `weight left (tag 2231-B)`, `winding key ×2`. */
export function thingText(
  d: Desk,
  { item, position, count, tag, description }: Omit<PaperBelonging, 'custody'>,
): string {
  const { papers, positions } = d.words
  const note = item === 'other' ? undefined : description
  const about = [note, tag && papers.claim.tag(tag)].filter(Boolean).join(', ')
  return [
    thingName(d, { item, ...(description ? { description } : {}) }),
    position && said(positions, position),
    count > 1 && papers.claim.times(count),
    about && `(${about})`,
  ]
    .filter(Boolean)
    .join(' ')
}

/** One line for each custody: what the shop has, what the owner kept, what was never there. */
export function belongingEntry(
  d: Desk,
  things: readonly PaperBelonging[],
  options: RowOptions = {},
): Block[] {
  const say = d.words.papers.claim
  const lines = custodies.flatMap(custody => {
    const named = things.filter(thing => thing.custody === custody).map(thing => thingText(d, thing))
    return named.length > 0
      ? [piece(say.inCustody(sentence(said(d.words.custodies, custody)), named.join(', ')))]
      : []
  })
  return ruledEntry(d.sheet, say.belongings, lines.length > 0 ? lines : [piece(say.noBelongings)], options)
}
