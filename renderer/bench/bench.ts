import type { InferResponseType } from 'hono/client'
import { hoursAndMinutes } from '../../core/labour/minutes.ts'
import type { Words } from '../../core/words/en/index.ts'
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

export const benchQuery = { queryKey: ['bench'], queryFn: () => answer(api.pages.bench.$get()) }

/** Parts and vendors to choose from. */
export const storesQuery = { queryKey: ['stores'], queryFn: () => answer(api.pages.stores.$get()) }

/** Minutes in words: `1 h 05 min`. */
export function timeWords(words: Words, minutes: number): string {
  const { hours, minutes: over } = hoursAndMinutes(minutes)
  return words.bench.time(hours, over)
}
