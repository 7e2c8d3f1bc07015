import type { AnyKind } from '../../core/papers/kinds.ts'
import type { AnyContents } from '../../core/papers/working.ts'
import { benchCard } from './kinds/bench-card.ts'
import { claimCheck } from './kinds/claim-check.ts'
import { conditionReport } from './kinds/condition-report.ts'
import { creditNote } from './kinds/credit-note.ts'
import { estimate } from './kinds/estimate.ts'
import { goAhead } from './kinds/go-ahead.ts'
import { handOver } from './kinds/hand-over.ts'
import { invoice } from './kinds/invoice.ts'
import type { PaperKindPlan } from './kinds/paper-kind.ts'
import { readyLetter } from './kinds/ready-letter.ts'
import { receipt } from './kinds/receipt.ts'
import { runInCertificate } from './kinds/run-in-certificate.ts'
import { statement } from './kinds/statement.ts'
import { tags } from './kinds/tags.ts'
import { uncollectedLetter } from './kinds/uncollected-letter.ts'
import { warranty } from './kinds/warranty.ts'

/** Every paper the program makes. A new paper is one contents type, one file in `kinds/` and one entry here. */
const papers: { readonly [K in AnyKind]: PaperKindPlan<Extract<AnyContents, { kind: K }>> } = {
  'claim-check': claimCheck,
  estimate,
  invoice,
  'credit-note': creditNote,
  receipt,
  warranty,
  tags,
  'condition-report': conditionReport,
  'go-ahead': goAhead,
  'bench-card': benchCard,
  'run-in-certificate': runInCertificate,
  'ready-letter': readyLetter,
  'hand-over': handOver,
  statement,
  'uncollected-letter': uncollectedLetter,
}

/** The plan for contents of a kind. The registry's type ties each plan to its own contents. */
export const planFor = <C extends AnyContents>({ kind }: C): PaperKindPlan<C> =>
  papers[kind] as unknown as PaperKindPlan<C>
