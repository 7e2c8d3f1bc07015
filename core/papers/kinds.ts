/** Which paper that is issued and numbered, and never changes again. */
export type PaperKind = 'claim-check' | 'estimate' | 'invoice' | 'credit-note' | 'receipt' | 'warranty'

/** One working paper: of what it is drawn, and whether an owner takes it home, so that a copy of what was handed out is kept. */
interface WorkingPlan {
  readonly of: 'repair' | 'estimate' | 'run-in' | 'owner'
  readonly goesHome: boolean
}

/** Every working paper. Bench card and tags stay in the shop. */
export const workingKinds = {
  tags: { of: 'repair', goesHome: false },
  'condition-report': { of: 'repair', goesHome: true },
  'go-ahead': { of: 'estimate', goesHome: true },
  'bench-card': { of: 'repair', goesHome: false },
  'run-in-certificate': { of: 'run-in', goesHome: true },
  'ready-letter': { of: 'repair', goesHome: true },
  'hand-over': { of: 'repair', goesHome: true },
  statement: { of: 'owner', goesHome: true },
  'uncollected-letter': { of: 'repair', goesHome: true },
} as const satisfies Record<string, WorkingPlan>

/** Which working paper. */
export type WorkingKind = keyof typeof workingKinds

/** Any paper. */
export type AnyKind = PaperKind | WorkingKind

/** A working paper that an owner takes home. */
export type HomeKind = {
  [K in WorkingKind]: (typeof workingKinds)[K]['goesHome'] extends true ? K : never
}[WorkingKind]

/** Whether an owner takes papers of this kind home. */
export const goesHome = (kind: WorkingKind): kind is HomeKind => workingKinds[kind].goesHome

/** The act by which a working paper goes home with its owner. */
export const handOutAct = 'papers.handOut'
