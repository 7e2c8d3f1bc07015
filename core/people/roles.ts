/** What a person is in the shop. One person may have several: in a small shop whoever works at the bench also serves at the counter. */
export const roles = ['owner', 'bench', 'counter'] as const

export type Role = (typeof roles)[number]

/** A person as far as it matters for what they may do. */
export interface Colleague {
  readonly active: boolean
  readonly roles: readonly Role[]
}

/** The same roles, each once and in the order in which they are always shown. */
export const inOrder = (some: readonly Role[]): Role[] => roles.filter(role => some.includes(role))

/** Whether somebody who works here is an owner: a shop without one could not be set right again. */
export const hasOwner = (people: readonly Colleague[]): boolean =>
  people.some(({ active, roles }) => active && roles.includes('owner'))
