import type { Period } from '../../core/calendar/period.ts'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { StatementContents } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { ownerEntries } from '../rows/owner-entries.ts'
import { ownerRow } from '../rows/register-rows.ts'
import { readSettings } from '../rows/settings.ts'
import { paperHead } from '../rules/issue.ts'

/** An owner's account to the day of `at`, or of a period, with the balance after each entry; refuses an owner merged into another. */
export function statementContents(
  read: Read,
  ownerId: number,
  at: string,
  period: Period | null = null,
): StatementContents {
  ownerRow(read, ownerId)
  const settings = readSettings(read)
  return {
    ...paperHead(read, settings, civilDateOf(at, settings.place.timeZone), { ownerId }),
    kind: 'statement',
    ...(period ? { period } : {}),
    ...ownerEntries(read, ownerId, period),
  }
}
