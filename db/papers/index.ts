import type { Period } from '../../core/calendar/period.ts'
import type { WorkingKind } from '../../core/papers/kinds.ts'
import type { WorkingContents } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { benchCardContents } from './bench-card.ts'
import { conditionReportContents } from './condition-report.ts'
import { goAheadContents } from './go-ahead.ts'
import { handOverContents } from './hand-over.ts'
import { readyLetterContents } from './ready-letter.ts'
import { runInContents } from './run-in.ts'
import { statementContents } from './statement.ts'
import { tagsContents } from './tags.ts'
import { uncollectedLetterContents } from './uncollected-letter.ts'

/** Gathers what a working paper says from the ledger as it stands at `at`; of a period, where it speaks of one. */
type Draw<K extends WorkingKind> = (
  read: Read,
  id: number,
  at: string,
  period?: Period | null,
) => Extract<WorkingContents, { kind: K }>

/** Every working paper by kind: of a repair by its id, but a go-ahead of an estimate, a certificate of a run, a statement of an owner. */
export const workingPapers: { readonly [K in WorkingKind]: Draw<K> } = {
  tags: tagsContents,
  'condition-report': conditionReportContents,
  'go-ahead': goAheadContents,
  'bench-card': benchCardContents,
  'run-in-certificate': runInContents,
  'ready-letter': readyLetterContents,
  'hand-over': handOverContents,
  statement: statementContents,
  'uncollected-letter': uncollectedLetterContents,
}
