import type { InferResponseType } from 'hono/client'
import type { Period } from '../../core/calendar/period.ts'
import type { WorkingKind } from '../../core/papers/kinds.ts'
import type { Words } from '../../core/words/en/index.ts'
import { answer, api } from '../api.ts'

/** A working paper as the ledger tells of it: whose it is, and the copies that were handed out. */
export type WorkingPaper = InferResponseType<(typeof api.pages.papers)[':kind'][':id']['$get']>
export type Copy = WorkingPaper['copies'][number]

const soonMs = 1000

/** The query of one working paper; asked for again until every copy handed out is drawn. */
export const workingPaperQuery = (kind: WorkingKind, id: string, period: Period | null) => ({
  queryKey: ['workingPaper', kind, id, period],
  queryFn: () => answer(api.pages.papers[':kind'][':id'].$get({ param: { kind, id }, query: { ...period } })),
  refetchInterval: ({ state }: { state: { data?: WorkingPaper | undefined } }) =>
    state.data?.copies.some(copy => !copy.drawn) ? soonMs : false,
})

/** What a working paper is called among others: with its estimate's or repair's number, or whose account it is of. */
export function paperTitle({ papers }: Words, { kind, estimateNumber, repair, owner }: WorkingPaper): string {
  const title = papers.titles[kind]
  const number = estimateNumber ?? repair?.number
  return number === undefined ? `${title}, ${owner.name}` : papers.titleNumber(title, String(number))
}
