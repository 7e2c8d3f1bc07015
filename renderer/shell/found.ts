import type { InferResponseType } from 'hono/client'
import type { api } from '../api.ts'

/** One thing found. */
export type Found = InferResponseType<typeof api.find.$get>['results'][number]

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
