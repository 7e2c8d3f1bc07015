import { eq } from 'drizzle-orm'
import { hasOwner } from '../../core/people/roles.ts'
import type { Read, Write } from '../file/ledger.ts'
import { type AboutPerson, aboutPerson, enterPerson } from '../rows/people.ts'
import { known, refuse } from '../rows/refusal.ts'
import { refuseUnseen } from '../rows/seen.ts'
import { type Subject, verb } from '../rows/verb.ts'
import { people } from '../schema/index.ts'

const thePerson = (id: number): { subject: Subject; result: { id: number } } => ({
  subject: { kind: 'person', id },
  result: { id },
})

const personRow = (read: Read, id: number) =>
  known(read.select().from(people).where(eq(people.id, id)).get(), 'person.unknown', 'personId')

/** Refuses what left the shop without an owner who works here. */
function refuseOwnerless(tx: Write, field: string): void {
  if (!hasOwner(tx.select().from(people).all())) refuse('person.lastOwner', field)
}

/** Enters a person who works here. */
export const addPerson = verb('shop.addPerson', (tx, input: AboutPerson & { name: string }) =>
  thePerson(enterPerson(tx, input)),
)

/** What was seen of a person; the roles in their order, with a space between them. */
export interface SeenPerson {
  readonly roles: string
  readonly initials: string
  readonly benchHours: string
}

export type ChangePerson = AboutPerson & { readonly personId: number; readonly seen: SeenPerson | null }

/** Changes a person's roles, initials and bench hours. */
export const changePerson = verb('shop.changePerson', (tx, { personId, seen, ...about }: ChangePerson) => {
  const { roles, initials, benchHours } = personRow(tx, personId)
  refuseUnseen(seen, { roles: roles.join(' '), initials, benchHours })
  tx.update(people).set(aboutPerson(about)).where(eq(people.id, personId)).run()
  refuseOwnerless(tx, 'roles')
  return thePerson(personId)
})

/** Says whether a person still works here; what they did stays on record. */
export const setPersonActive = verb(
  'shop.setPersonActive',
  (tx, input: { personId: number; active: boolean; seen: { active: boolean } | null }) => {
    const { active } = personRow(tx, input.personId)
    refuseUnseen(input.seen, { active })
    tx.update(people).set({ active: input.active }).where(eq(people.id, input.personId)).run()
    refuseOwnerless(tx, 'active')
    return thePerson(input.personId)
  },
)
