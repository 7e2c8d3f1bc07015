import { hc, type InferResponseType } from 'hono/client'
import type { RestoreApi } from '../../electron/server/api.ts'
import { asClient } from '../api.ts'

/** The typed client of what has the ledger in hand, whether it is open or not. */
export const restoreApi = hc<RestoreApi>('/api/restore', asClient)

/** A copy of the ledger, what stands in it, and what would be missing. */
export type CopyLook = InferResponseType<typeof restoreApi.look.$post, 200>

/** Why the ledger is not open. */
export type NotOpen = NonNullable<InferResponseType<typeof restoreApi.index.$get>['notOpen']>
