import ical from 'ical-generator'
import type { Words } from '../../../core/words/en/index.ts'
import type { expectedDates } from '../../../db/exports/dates.ts'

/** A civil date as a whole day: the generator writes it in UTC, so no zone can move it. */
const wholeDay = (on: string) => ({ allDay: true, start: new Date(`${on}T00:00:00Z`) })

/**
 * The shop's expected dates as iCalendar (RFC 5545): estimated dates, run-in dues and ends, outside
 * work, orders. Entries keep their
 * identity, so that a calendar fetched again changes them instead of doubling them.
 */
export function calendar(
  { estimated, runIn, runInEnds, outside, orders }: ReturnType<typeof expectedDates>,
  { words, name, at }: { words: Words['exports']; name: string; at: string },
): string {
  const stamp = new Date(at)
  const say = words.calendar
  const book = ical({ name, prodId: '//Countwheel//Calendar//EN' })
  for (const { number, on, owner } of estimated)
    book.createEvent({
      id: `estimated-${number}@countwheel`,
      stamp,
      ...wholeDay(on),
      summary: say.estimated({ number, owner }),
    })
  for (const { id, number, kind, at: due, place } of runIn)
    book.createEvent({
      id: `run-in-${id}@countwheel`,
      stamp,
      start: new Date(due),
      summary: say.runIn[kind]({ number }),
      ...(place ? { location: place } : {}),
    })
  for (const { number, on } of runInEnds)
    book.createEvent({
      id: `run-in-end-${number}@countwheel`,
      stamp,
      ...wholeDay(on),
      summary: say.runInEnds({ number }),
    })
  for (const { id, on, part } of orders)
    book.createEvent({ id: `order-${id}@countwheel`, stamp, ...wholeDay(on), summary: say.order({ part }) })
  for (const { id, number, on, vendor, description } of outside)
    book.createEvent({
      id: `outside-${id}@countwheel`,
      stamp,
      ...wholeDay(on),
      summary: say.outside({ number, vendor }),
      description,
    })
  return book.toString()
}
