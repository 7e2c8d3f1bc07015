import { eq } from 'drizzle-orm'
import type { Write } from '../file/ledger.ts'
import { type RedactInput, redactAct } from '../rows/redactions.ts'
import { known, refuse } from '../rows/refusal.ts'
import { verb } from '../rows/verb.ts'
import { dayBook } from '../schema/index.ts'

/** Takes the text out of one row: its input, the salt that its commitment was made with, and what was answered. */
function takeOut(tx: Write, { id, commitment }: RedactInput['rows'][number], field: string): void {
  const row = known(
    tx.select().from(dayBook).where(eq(dayBook.id, id)).get(),
    'dayBook.unknown',
    `${field}.id`,
  )
  if (row.commitment !== commitment) refuse('dayBook.otherRow', `${field}.commitment`, { id })
  if (row.act === redactAct) refuse('dayBook.aRedaction', `${field}.id`, { id })
  if (row.input === null) refuse('dayBook.redactedAlready', `${field}.id`, { id })
  tx.update(dayBook).set({ input: null, salt: null, result: null }).where(eq(dayBook.id, id)).run()
}

/**
 * Takes texts out of the day book, as the law on personal data may ask for. That and why is an entry of its own; the rows stay in the
 * chain by their commitments.
 */
export const redact = verb('dayBook.redact', (tx, input: RedactInput) => {
  for (const [i, row] of input.rows.entries()) takeOut(tx, row, `rows[${i}]`)
  return { subject: { kind: 'shop', id: 1 }, result: { redacted: input.rows.length } }
})
