import type { InferResponseType } from 'hono/client'
import { answer, api } from '../api.ts'

/** The shelf as the ledger tells it. */
export type Shelf = InferResponseType<typeof api.pages.shelf.$get>
/** One clock on the round. */
export type RoundRow = Shelf['rows'][number]
/** One clock that may be put on the shelf. */
export type Startable = Shelf['toStart'][number]
/** One run with its log and figures. */
export type RunView = InferResponseType<(typeof api.pages.runs)[':id']['$get']>
/** An entry of a log. */
export type LogEntry = RunView['run']['log'][number]

export const shelfQuery = {
  queryKey: ['shelf'],
  queryFn: () => answer(api.pages.shelf.$get()),
}

/** The query of one run by its number in the ledger. */
export const runQuery = (id: number) => ({
  queryKey: ['run', id],
  queryFn: () => answer(api.pages.runs[':id'].$get({ param: { id: String(id) } })),
})
