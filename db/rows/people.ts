import { eq, sql } from 'drizzle-orm'
import { benchHoursProblems } from '../../core/people/bench-hours.ts'
import { inOrder, type Role } from '../../core/people/roles.ts'
import type { Read, Write } from '../file/ledger.ts'
import { people } from '../schema/index.ts'
import { refuse, refuseAny } from './refusal.ts'

/** What is said of a person besides the name; '' for initials means those of the name, for bench hours that nobody counted them. */
export interface AboutPerson {
  readonly roles: readonly Role[]
  readonly initials: string
  /** Hours a week at the bench, as decimal text. */
  readonly benchHours: string
}

/** True when the number is that of a person in the ledger. */
export const isPerson = (read: Read, id: number): boolean =>
  read.select({ id: people.id }).from(people).where(eq(people.id, id)).get() !== undefined

/** What is said of a person as it is kept; refuses hours that no week has. */
export function aboutPerson({ roles, initials, benchHours }: AboutPerson): AboutPerson {
  refuseAny(benchHoursProblems(benchHours))
  return { roles: inOrder(roles), initials, benchHours }
}

/** Enters a person; refuses a name that is taken. Returns the person's number. */
export function enterPerson(tx: Write, { name, ...about }: AboutPerson & { readonly name: string }): number {
  const taken = tx.select().from(people).where(sql`${people.name} = ${name} COLLATE NOCASE`).get()
  if (taken) refuse('person.nameTaken', 'name', { name })
  return tx
    .insert(people)
    .values({ name, ...aboutPerson(about) })
    .returning()
    .get().id
}
