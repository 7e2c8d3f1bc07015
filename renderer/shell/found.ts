import type { InferResponseType } from 'hono/client'
import type { Words } from '../../core/words/en/index.ts'
import type { api } from '../api.ts'

/** One thing found. */
export type Found = InferResponseType<typeof api.find.$get>['results'][number]

const order: readonly Found['kind'][] = ['repair', 'owner', 'clock', 'paper']

/** What was found, repairs before owners before clocks before papers, else as it came. */
export const inOrder = (found: readonly Found[]): Found[] =>
  found.toSorted((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind))

/** Where a thing found is opened. */
export function placeOf({ kind, id, number }: Pick<Found, 'kind' | 'id' | 'number'>): string {
  switch (kind) {
    case 'repair':
      return `/counter/${number}`
    case 'paper':
      return `/accounts/paper/${id}`
    default:
      return `/register/${kind}/${id}`
  }
}

/** What a line of the find box says: a number or the kind, whose it is, and what tells it from another. */
export function foundWords(words: Words, found: Found): { lead: string; name: string; detail: string } {
  const { kinds } = words.screens.find
  const titles: Readonly<Record<string, string>> = words.papers.titles
  const clock = found.form && [words.forms[found.form], found.maker, found.serial].filter(Boolean).join(', ')
  const details: Record<Found['kind'], string> = {
    owner: (found.address ?? '').replaceAll('\n', ', '),
    clock: clock ?? '',
    repair: clock ?? '',
    paper: titles[found.paperKind ?? ''] ?? '',
  }
  return { lead: found.number ?? kinds[found.kind], name: found.name ?? '', detail: details[found.kind] }
}
