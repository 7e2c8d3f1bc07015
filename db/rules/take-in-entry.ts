import type { Belonging, Custody, Position, SpringState } from '../../core/vocabulary/intake.ts'
import type { Exclusion, Scope } from '../../core/vocabulary/work.ts'
import type { ConditionEntry } from './condition-notes.ts'
import type { NewClock, NewOwner } from './register-entries.ts'

/** One separable thing and who has it. */
export interface BelongingEntry {
  readonly item: Belonging
  readonly position: Position | ''
  readonly description: string
  readonly count: number
  readonly custody: Custody
  readonly tag: string
}

/** Everything recorded when a clock comes over the counter. */
export interface TakeIn {
  readonly owner: { readonly id: number } | NewOwner
  readonly clock: { readonly id: number } | NewClock
  readonly fault: string
  readonly scope: Scope
  /** The earlier repair this one comes back from. */
  readonly comebackOf: number | null
  /** The shop says this fault falls under that repair's warranty. */
  readonly covered: boolean
  /** What a comeback's fault comes from, as far as it can be seen, among the things a warranty may leave out. */
  readonly causes: readonly Exclusion[]
  readonly estimateOnly: boolean
  readonly springs: SpringState
  readonly agreedWords: string
  /** What was said of the cost, in major units. */
  readonly fee: string | null
  readonly low: string | null
  readonly high: string | null
  readonly estimatedOn: string | null
  readonly signedInBy: string
  /** The draft this was typed as, which is done with; '' where there was none. */
  readonly draft: string
  readonly condition: readonly ConditionEntry[]
  /** Hashes of kept photographs of the whole clock. */
  readonly photographs: readonly string[]
  readonly belongings: readonly BelongingEntry[]
}
