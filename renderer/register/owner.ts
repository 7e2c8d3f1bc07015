import type { InferResponseType } from 'hono/client'
import { answer, api } from '../api.ts'

/** An owner with everything on record. */
export type Owner = InferResponseType<(typeof api.pages.owners)[':id']['$get']>

/** What each form on an owner's page is given. */
export interface OwnerProps {
  readonly view: Owner
  /** Closes the form: the act is written, or the person went back. */
  readonly close: () => void
}

/** The query of one owner. */
export const ownerQuery = (id: number) => ({
  queryKey: ['owner', id],
  queryFn: () => answer(api.pages.owners[':id'].$get({ param: { id: String(id) } })),
})
