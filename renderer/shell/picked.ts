import { shownInitials } from '../../core/people/initials.ts'

/** One of the people that can be chosen. */
interface Named {
  readonly id: number
  readonly name: string
  readonly initials: string
}

/** Whoever a key stands for: a figure for the place in the list, a letter for the only one whose initials begin with it. */
export function pickedBy<P extends Named>(key: string, people: readonly P[]): P | undefined {
  if (/^[1-9]$/.test(key)) return people[Number(key) - 1]
  const same = people.filter(person => shownInitials(person)[0]?.toLowerCase() === key.toLowerCase())
  return same.length === 1 ? same[0] : undefined
}
