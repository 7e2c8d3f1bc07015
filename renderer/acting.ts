import { useEffect, useLayoutEffect } from 'react'
import { useRemembered } from './remembered.ts'

/** A person as the shop has them. */
interface Person {
  readonly id: number
  readonly active: boolean
}

let acting = ''

/** The header that says who acts; none while nobody is named. */
export const actingHeader = (): Record<string, string> => (acting ? { 'Countwheel-Person': acting } : {})

/** Whoever was chosen in this ledger and still works here; the only person there is; otherwise nobody (''). */
export function actingPerson(people: readonly Person[], chosen: string): string {
  const here = people.filter(({ active }) => active).map(({ id }) => String(id))
  if (here.includes(chosen)) return chosen
  return here.length === 1 ? (here[0] ?? '') : ''
}

/** Who acts in this window in this ledger, and the choice of another; every act sent from now on carries it. */
export function useActing({
  ledger,
  people,
}: {
  readonly ledger: string
  readonly people: readonly Person[]
}): [string, (id: string) => void] {
  const [chosen, choose] = useRemembered(`person.${ledger}`, 'window')
  const person = actingPerson(people, chosen)
  useLayoutEffect(() => {
    acting = person
  }, [person])
  // The only one here stays the one who acts when others are entered later.
  useEffect(() => {
    if (person && person !== chosen) choose(person)
  }, [person, chosen, choose])
  return [person, choose]
}
