import { asc, eq } from 'drizzle-orm'
import type { Read } from '../file/ledger.ts'
import { dayBook, people } from '../schema/index.ts'

/** The act that takes texts out of the day book. */
export const redactAct = 'dayBook.redact'

/** Which rows, each by its number and what it is chained by, and why. */
export interface RedactInput {
  readonly rows: readonly { readonly id: number; readonly commitment: string }[]
  readonly reason: string
}

/** What a row's text was taken out by. */
export interface Redaction {
  readonly at: string
  readonly by: string | null
  readonly reason: string
}

/** Every row whose text was taken out, by its number, and by what. Redactions are few, and are read whole. */
export function redactions(read: Read): Map<number, Redaction> {
  const acts = read
    .select({ at: dayBook.at, by: people.name, input: dayBook.input })
    .from(dayBook)
    .leftJoin(people, eq(people.id, dayBook.personId))
    .where(eq(dayBook.act, redactAct))
    .orderBy(asc(dayBook.id))
    .all()
  return new Map(
    acts.flatMap(({ at, by, input }) => {
      const { rows, reason } = JSON.parse(input ?? '{"rows":[],"reason":""}') as RedactInput
      return rows.map(({ id }) => [id, { at, by, reason }] as const)
    }),
  )
}
