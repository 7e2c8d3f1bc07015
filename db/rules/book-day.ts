import { and, desc, eq, lte, sql } from 'drizzle-orm'
import { addDays } from '../../core/calendar/civil.ts'
import type { PaperKind } from '../../core/papers/kinds.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Read } from '../file/ledger.ts'
import { refuse } from '../rows/refusal.ts'
import type { Doing } from '../rows/verb.ts'
import { closedPeriods, documents } from '../schema/index.ts'
import { dayOfDoing } from './issue.ts'

/** How far a closing may reach beyond today and still count, in days: a clock put back by some days opens nothing again. */
const closedAheadDays = 62

/**
 * The last day of the books that are closed; null while none are. What was closed by a clock that ran months or years ahead closes
 * nothing until that day comes near.
 */
export const closedTo = (read: Read, today: string): string | null =>
  read
    .select({ to: sql<string | null>`max(${closedPeriods.toDate})` })
    .from(closedPeriods)
    .where(lte(closedPeriods.toDate, addDays(today, closedAheadDays)))
    .get()?.to ?? null

/** The day an entry of money is booked on: `asked`, or the day it is done. Refuses one to come, and one in a closed period. */
export function bookDay(
  read: Read,
  settings: Settings,
  doing: Doing,
  asked: string | null = null,
  field = 'onDate',
): string {
  const today = dayOfDoing(doing, settings)
  const on = asked ?? today
  if (on > today) refuse('date.inFuture', field)
  const closed = closedTo(read, today)
  if (closed !== null && on <= closed) refuse('period.closed', field, { date: on, to: closed })
  return on
}

/**
 * The day of issue of an invoice or credit note: as `bookDay`, and not before the last one of its kind, whose number is lower. One that
 * bears a day still to come was issued by a clock that ran ahead: it holds nothing up, and is corrected by a credit note of today.
 */
export function issueDay(
  read: Read,
  settings: Settings,
  doing: Doing,
  kind: PaperKind,
  asked: string | null,
): string {
  const on = bookDay(read, settings, doing, asked, 'issuedOn')
  const last = read
    .select({ number: documents.number, on: documents.issuedOn })
    .from(documents)
    .where(and(eq(documents.kind, kind), lte(documents.issuedOn, dayOfDoing(doing, settings))))
    .orderBy(desc(documents.sequence))
    .limit(1)
    .get()
  if (last && on < last.on) refuse('document.earlier', 'issuedOn', { number: last.number, date: last.on })
  return on
}
