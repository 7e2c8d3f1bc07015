import type { PaperContents, PaperKind } from '../../core/papers/contents.ts'
import { claimCheck } from './kinds/claim-check.ts'
import { creditNote } from './kinds/credit-note.ts'
import { estimate } from './kinds/estimate.ts'
import { invoice } from './kinds/invoice.ts'
import type { PaperKindPlan } from './kinds/paper-kind.ts'
import { receipt } from './kinds/receipt.ts'
import { warranty } from './kinds/warranty.ts'

/** Every paper the program makes. A new paper is one contents type, one file in `kinds/` and one entry here. */
const papers: { readonly [K in PaperKind]: PaperKindPlan<Extract<PaperContents, { kind: K }>> } = {
  'claim-check': claimCheck,
  estimate,
  invoice,
  'credit-note': creditNote,
  receipt,
  warranty,
}

/** The plan for contents of a kind. The registry's type ties each plan to its own contents. */
export const planFor = <C extends PaperContents>({ kind }: C): PaperKindPlan<C> =>
  papers[kind] as unknown as PaperKindPlan<C>
