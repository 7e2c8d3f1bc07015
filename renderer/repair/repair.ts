import type { InferResponseType } from 'hono/client'
import type { Words } from '../../core/words/en/index.ts'
import { answer, api } from '../api.ts'

/** Everything on record about one repair, as the ledger tells it. */
export type Repair = InferResponseType<(typeof api.pages.repairs)[':number']['$get']>

/** What each act's form is given. */
export interface ActProps {
  readonly view: Repair
  /** Closes the form: the act is written, or the person went back. */
  readonly close: () => void
  /** The repair's own address, where what came of the act can be shown. */
  readonly place: string
}

/** The query of one repair, by its number as it stands in the address. */
export const repairQuery = (number: string) => ({
  queryKey: ['repair', number],
  queryFn: () => answer(api.pages.repairs[':number'].$get({ param: { number } })),
})

/** What is still to be paid; 0 when the shop holds the owner's money instead. */
export const dueMinor = ({ money }: Repair): number => Math.max(money.balance.due, 0)

/** An estimate by its title and number: `Supplement 2231/2`. */
export const estimateTitle = (
  { papers }: Words,
  { supplement, number }: { readonly supplement: boolean; readonly number: string },
): string => papers.titleNumber(supplement ? papers.supplementTitle : papers.titles.estimate, number)

/** The estimate that waits to be sent, or the last one sent. */
export const lastEstimate = ({ estimates }: Repair) => estimates.at(-1)
