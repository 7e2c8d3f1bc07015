import { and, asc, eq, ne } from 'drizzle-orm'
import type { Period } from '../../core/calendar/period.ts'
import { minor } from '../../core/money/minor.ts'
import type { Read } from '../file/ledger.ts'
import { ownerEntries } from '../rows/owner-entries.ts'
import { ownerRow } from '../rows/register-rows.ts'
import { accountHeld } from '../rules/balance.ts'
import { repairs } from '../schema/index.ts'

/** An owner's account in a period: every entry with the balance after it, what is open on which repair, and what is held. */
export function ownerAccountView(read: Read, ownerId: number, period: Period) {
  const { id, name } = ownerRow(read, ownerId)
  const open = read
    .select({ id: repairs.id, number: repairs.number, dueMinor: repairs.dueMinor })
    .from(repairs)
    .where(and(eq(repairs.ownerId, id), ne(repairs.dueMinor, minor(0))))
    .orderBy(asc(repairs.id))
    .all()
  return {
    ...period,
    owner: { id, name },
    heldMinor: accountHeld(read, id),
    open,
    ...ownerEntries(read, id, period),
  }
}
