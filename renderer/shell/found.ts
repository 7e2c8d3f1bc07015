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

/** What a line of the find box says: what leads, whose it is, and what tells it from another. */
export function foundWords(words: Words, found: Found): { lead: string; name: string; detail: string } {
  const titles: Readonly<Record<string, string>> = words.papers.titles
  const { kind, number, form } = found
  const clock = form ? [words.forms[form], found.maker, found.serial].filter(Boolean).join(', ') : ''
  const name = found.name ?? ''
  switch (kind) {
    case 'owner':
      return { lead: name, name: '', detail: ownerDetail(found) }
    case 'clock':
      return { lead: clock, name, detail: '' }
    case 'repair':
      return { lead: number ?? '', name, detail: clock }
    case 'paper':
      return { lead: number ?? '', name, detail: titles[found.paperKind ?? ''] ?? '' }
  }
}

/** Where an owner found lives, and the contact that was typed or is preferred. */
export const ownerDetail = ({ address, contact }: Found): string =>
  [(address ?? '').replaceAll('\n', ', '), contact].filter(Boolean).join(' · ')
