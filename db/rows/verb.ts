import { createHash } from 'node:crypto'
import { desc } from 'drizzle-orm'
import type { Ledger, Write } from '../file/ledger.ts'
import { dayBook } from '../schema/index.ts'

/** When an act is done and by whom; always given from outside, so that the same acts make the same ledger. */
export interface Doing {
  /** ISO instant with milliseconds and Z. */
  readonly at: string
  readonly personId: number | null
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

/** What the first row of the day book carries as the hash before it. */
export const firstHash = '0'.repeat(64)

/** The hash that chains a day-book row to the one before it: SHA-256 over every field of the row, in order. */
export const dayBookHash = (row: {
  previousHash: string
  at: string
  personId: number | null
  act: string
  subjectKind: string
  subjectId: number
  input: string
}): string =>
  createHash('sha256')
    .update(
      JSON.stringify([
        row.previousHash,
        row.at,
        row.personId,
        row.act,
        row.subjectKind,
        row.subjectId,
        row.input,
      ]),
    )
    .digest('hex')

function enter(tx: Write, doing: Doing, act: string, subject: Subject, input: unknown): void {
  const last = tx.select({ hash: dayBook.hash }).from(dayBook).orderBy(desc(dayBook.id)).limit(1).get()
  const row = {
    at: doing.at,
    personId: doing.personId,
    act,
    subjectKind: subject.kind,
    subjectId: subject.id,
    input: JSON.stringify(input),
    previousHash: last?.hash ?? firstHash,
  }
  tx.insert(dayBook)
    .values({ ...row, hash: dayBookHash(row) })
    .run()
}

/**
 * Makes a verb of `body`, which reads, lets core decide, writes, and says what the act was about and what came of it.
 * The input given here is what the day book keeps: it must already be checked.
 */
export function verb<Input, Result>(
  act: string,
  body: (tx: Write, input: Input, doing: Doing) => { subject: Subject; result: Result },
): Verb<Input, Result> {
  const perform = (ledger: Ledger, doing: Doing, input: Input): Result =>
    ledger.write(tx => {
      const { subject, result } = body(tx, input, doing)
      enter(tx, doing, act, subject, input)
      return result
    })
  return Object.assign(perform, { act })
}
