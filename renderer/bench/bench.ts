import type { InferResponseType } from 'hono/client'
import { answer, api } from '../api.ts'
import type { Repair } from '../repair/repair.ts'

/** The bench as the ledger tells it. */
export type Bench = InferResponseType<typeof api.pages.bench.$get>
/** One repair of the queue. */
export type QueueRow = Bench['queue'][number]
/** One labour clock that runs. */
export type Running = Bench['running'][number]
/** What the bench has on record of a repair. */
export type Card = Repair['bench']

/** Parts and vendors to choose from. */
export const storesQuery = { queryKey: ['stores'], queryFn: () => answer(api.pages.stores.$get()) }
