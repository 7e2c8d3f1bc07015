import type { AnyKind, WorkingKind } from '../../papers/kinds.ts'
import type { PaperSize } from '../../papers/sizes.ts'

/** The names of the working papers: those drawn from the ledger as it stands, not issued. */
export const workingTitles = {
  tags: 'Tags',
  'condition-report': 'Condition report',
  'go-ahead': 'Go-ahead to sign',
  'bench-card': 'Bench card',
  'run-in-certificate': 'Run-in certificate',
  'ready-letter': 'Ready letter',
  'hand-over': 'Hand-over receipt',
  statement: 'Statement of account',
  'uncollected-letter': 'Letter on an uncollected clock',
} satisfies Record<WorkingKind, string>

/** The name of every paper. */
export const paperTitles = {
  'claim-check': 'Claim check',
  estimate: 'Estimate',
  invoice: 'Invoice',
  'credit-note': 'Credit note',
  receipt: 'Receipt',
  warranty: 'Warranty certificate',
  ...workingTitles,
} satisfies Record<AnyKind, string>

/** The name of every size of paper. */
export const paperSizeNames = {
  a4: 'A4',
  letter: 'Letter',
  a6: 'A6',
  label62x29: 'label 62 × 29 mm',
  label4x6: 'label 4 × 6 in',
} satisfies Record<PaperSize, string>
