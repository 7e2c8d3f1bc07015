import type { InferResponseType } from 'hono/client'
import { answer, api } from '../api.ts'

/** The stores as the ledger tells them. */
export type Stores = InferResponseType<typeof api.pages.stores.$get>
export type PartRow = Stores['parts'][number]
export type OrderRow = Stores['orders'][number]
/** One part with its stock moves. */
export type PartView = InferResponseType<(typeof api.pages.parts)[':id']['$get']>

export const storesQuery = { queryKey: ['stores'], queryFn: () => answer(api.pages.stores.$get()) }

export const partQuery = (id: string) => ({
  queryKey: ['part', id],
  queryFn: () => answer(api.pages.parts[':id'].$get({ param: { id } })),
})
