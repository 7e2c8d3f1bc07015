import { type Problem, problem } from '../problems.ts'
import { type Colleague, type Role, roles } from './roles.ts'

const owner: readonly Role[] = ['owner']
const counter: readonly Role[] = ['owner', 'counter']
/** Whoever works here, but by name. */
const byName: readonly Role[] = roles

/**
 * What not everybody may do without a word: acts by their names in the day book, and taking books out and bringing a backup back, which
 * are no acts. Our own policy: money that comes in and its papers are the counter's, what lessens or closes the books, the shop's own
 * rules and what cannot be undone are an owner's, and what binds the shop or its owner of a clock needs a name. All else is everybody's.
 */
export const reserved = {
  'accounts.closePeriod': owner,
  'accounts.countDrawer': counter,
  'accounts.credit': owner,
  'accounts.invoice': counter,
  'accounts.pay': counter,
  'accounts.payBack': owner,
  'accounts.refund': owner,
  'accounts.takeBackWriteOff': owner,
  'accounts.writeOff': owner,
  'counter.decideCover': byName,
  'counter.handOver': byName,
  'dayBook.redact': owner,
  'estimates.recordWord': byName,
  'estimates.send': byName,
  'exports.take': owner,
  'papers.handOut': byName,
  'register.forgetOwner': owner,
  'register.import': owner,
  'register.mergeOwners': byName,
  'register.passClock': byName,
  'restore.bringBack': owner,
  'shelf.pass': byName,
  'shop.addPerson': owner,
  'shop.addPlace': owner,
  'shop.changePerson': owner,
  'shop.changeSettings': owner,
  'shop.closeOn': owner,
  'shop.openOn': owner,
  'shop.setPersonActive': owner,
} satisfies Readonly<Record<string, readonly Role[]>>

/** What is reserved to some. */
export type Reserved = keyof typeof reserved

/** Who may do it by name; null where nobody asks. */
export const whoMay = (act: string): readonly Role[] | null =>
  Object.hasOwn(reserved, act) ? reserved[act as Reserved] : null

/** Who wants to do what. */
export interface Wanted {
  /** The act's name, or that of something reserved that is no act. */
  readonly act: string
  /** Null where nobody is named. */
  readonly who: Colleague | null
  /** Whether more than one person works here: whoever is alone need not say a name. */
  readonly several: boolean
}

/** Why it may not be done: by somebody who no longer works here, without a name, or by somebody it is not given to; null where it may. */
export function mayNot({ act, who, several }: Wanted): Problem | null {
  if (who && !who.active) return problem('person.notHere', '')
  const some = whoMay(act)
  if (!some) return null
  if (!who) return several ? problem('act.nameNeeded', '') : null
  return some.some(role => who.roles.includes(role))
    ? null
    : problem('act.reserved', '', { who: some.join(' ') })
}
