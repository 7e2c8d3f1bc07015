import type { ClaimCheckContents, ConditionNote } from '../../../core/papers/contents.ts'
import type { Block } from '../kit/flow.ts'
import type { RowOptions } from '../kit/row.ts'
import { piece, ruledEntry } from './entry.ts'
import { type Desk, said, sentence } from './speech.ts'

/** The condition as seen at the counter: components, signs of earlier repair, springs. */
export function conditionEntries(d: Desk, contents: ClaimCheckContents, options: RowOptions): Block[] {
  const { sheet, words } = d
  const say = words.papers.claim
  const { condition, earlierRepairs = [], springs } = contents
  const signs = [
    ...(earlierRepairs.length > 0
      ? [
          say.conditionOf(
            say.earlierRepairs,
            earlierRepairs.map(code => said(words.earlierRepairs, code)).join(', '),
          ),
        ]
      : []),
    ...(springs ? [say.conditionOf(say.springs, said(words.springStates, springs))] : []),
  ]
  const pieces = [...notes(d, condition), signs.join(' · ')].filter(Boolean).map(text => piece(text))
  return pieces.length > 0 ? ruledEntry(sheet, say.condition, pieces, options) : []
}

/** A line for each component with a remark; components without one stand together when they are in the same state. */
function notes({ words }: Desk, condition: readonly ConditionNote[]): string[] {
  const lines = new Map<string, string[]>()
  for (const { component, finish, grade, remark } of condition) {
    const state = [finish && said(words.finishes, finish), grade && said(words.grades, grade)]
      .filter(Boolean)
      .join(', ')
    const about = [state, remark].filter(Boolean).join('. ')
    const key = remark ? `${component} ${about}` : state
    lines.set(key, [...(lines.get(key) ?? [about]), said(words.components, component)])
  }
  return [...lines.values()].map(([about = '', ...named]) =>
    words.papers.claim.conditionOf(sentence(named.join(', ')), about),
  )
}
