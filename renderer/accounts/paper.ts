import type { InferResponseType } from 'hono/client'
import type { PaperKind } from '../../core/papers/kinds.ts'
import { answer, api } from '../api.ts'

/** One paper with what it says. */
export type PaperView = InferResponseType<(typeof api.pages.documents)[':id']['$get']>

/** Whether papers of a kind speak of an amount; a claim check and a certificate have none of their own. */
export const carriesMoney = (kind: PaperKind): boolean => kind !== 'claim-check' && kind !== 'warranty'

const soonMs = 1000

/** The query of one paper; asked for again until the paper itself is kept. */
export const paperQuery = (id: string) => ({
  queryKey: ['document', id],
  queryFn: () => answer(api.pages.documents[':id'].$get({ param: { id } })),
  refetchInterval: ({ state }: { state: { data?: PaperView | undefined } }) =>
    state.data && !state.data.drawn ? soonMs : false,
})
