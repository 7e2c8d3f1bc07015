import { versionOf } from '../../core/acts/versions.ts'
import type { Ledger, Write } from '../file/ledger.ts'
import type { Outside } from '../file/outside.ts'
import { answeredBefore, enter } from './day-book.ts'

/** When an act is done and by whom; always given from outside, so that the same acts make the same ledger. */
export interface Doing {
  /** ISO instant with milliseconds and Z. */
  readonly at: string
  readonly personId: number | null
  /** What the sender calls this doing of the act, so that it is not done twice; left out where nobody asks for that. */
  readonly key?: string | null
}

/** What an act was about. */
export interface Subject {
  readonly kind:
    | 'shop'
    | 'person'
    | 'owner'
    | 'clock'
    | 'repair'
    | 'estimate'
    | 'document'
    | 'part'
    | 'vendor'
    | 'run-in'
    | 'photograph'
    | 'write-off'
    | 'drawer-count'
    | 'closed-period'
  readonly id: number
}

/** An act of the shop: one transaction that also writes its row in the day book. `act` is its name, `area.verb`. */
export interface Verb<Input, Result> {
  (ledger: Ledger, doing: Doing, input: Input): Result
  readonly act: string
}

/**
 * Makes a verb of `body`, which reads, lets core decide, writes, and says what the act was about and what came of it.
 * The input given here is what the day book keeps: it must already be checked. Where the act was done before under the same key, it is
 * not done again: what was answered then is answered.
 */
export function verb<Input, Result>(
  act: string,
  body: (
    tx: Write,
    input: Input,
    doing: Doing,
    random: Outside['random'],
  ) => { subject: Subject; result: Result },
): Verb<Input, Result> {
  const perform = (ledger: Ledger, doing: Doing, given: Input): Result =>
    ledger.write(tx => {
      const { at, personId, key = null } = doing
      const input = JSON.stringify(given)
      const before = key === null ? undefined : answeredBefore(tx, key, act, input)
      if (before !== undefined) return JSON.parse(before) as Result
      const { subject, result } = body(tx, given, doing, ledger.random)
      const about = { subjectKind: subject.kind, subjectId: subject.id }
      const version = versionOf(act)
      enter(
        tx,
        { at, personId, act, version, key, ...about, input, result: JSON.stringify(result) },
        ledger.random,
      )
      return result
    })
  return Object.assign(perform, { act })
}
