import type { InferResponseType } from 'hono/client'
import { answer, api } from '../api.ts'

/** One paper with what it says. */
export type PaperView = InferResponseType<(typeof api.pages.documents)[':id']['$get']>

/** The query of one paper. */
export const paperQuery = (id: string) => ({
  queryKey: ['document', id],
  queryFn: () => answer(api.pages.documents[':id'].$get({ param: { id } })),
})
