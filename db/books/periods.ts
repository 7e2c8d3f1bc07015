import { refuse } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { verb } from '../rows/verb.ts'
import { closedTo } from '../rules/book-day.ts'
import { dayOfDoing } from '../rules/issue.ts'
import { closedPeriods } from '../schema/index.ts'

/** Closes the books up to a day, which is over: nothing is booked on it or before it any more. There is no opening again. */
export const closePeriod = verb('accounts.closePeriod', (tx, input: { toDate: string }, doing) => {
  const { toDate } = input
  const today = dayOfDoing(doing, readSettings(tx))
  const closed = closedTo(tx, today)
  if (toDate >= today) refuse('period.notOver', 'toDate')
  if (closed !== null && toDate <= closed) refuse('period.alreadyClosed', 'toDate', { to: closed })
  const { id } = tx
    .insert(closedPeriods)
    .values({ at: doing.at, personId: doing.personId, toDate })
    .returning()
    .get()
  return { subject: { kind: 'closed-period', id }, result: { id, toDate } }
})
