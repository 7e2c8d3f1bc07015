import type { CivilDate } from './civil.ts'
import { addDays } from './civil.ts'
import type { Instant } from './zone.ts'

/** One whole-day entry of a calendar. */
export interface CalendarDay {
  /** The same for the same thing each time the calendar is read, so that it moves instead of standing twice. */
  readonly uid: string
  readonly onDate: CivilDate
  readonly summary: string
}

const plainDate = (date: CivilDate): string => date.replaceAll('-', '')

/** TEXT of RFC 5545 §3.3.11: backslash, semicolon, comma and line breaks are escaped. */
const text = (words: string): string => words.replace(/[\\;,]/g, '\\$&').replace(/\r\n|\r|\n/g, '\\n')

const encoder = new TextEncoder()

/** A content line folded to at most 75 octets a line, never within a character (RFC 5545 §3.1). */
function folded(line: string): string {
  const lines: string[] = []
  let current = ''
  let octets = 0
  for (const character of line) {
    const size = encoder.encode(character).length
    if (octets + size > 75) {
      lines.push(current)
      current = ' '
      octets = 1
    }
    current += character
    octets += size
  }
  return [...lines, current].join('\r\n')
}

function event({ uid, onDate, summary }: CalendarDay, stamp: Instant): string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${text(uid)}`,
    `DTSTAMP:${stamp.slice(0, 19).replace(/[-:]/g, '')}Z`,
    `DTSTART;VALUE=DATE:${plainDate(onDate)}`,
    `DTEND;VALUE=DATE:${plainDate(addDays(onDate, 1))}`,
    `SUMMARY:${text(summary)}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ]
}

/** An iCalendar file (RFC 5545) of whole days; `stamp` is when it was made. */
export const icalendar = (days: readonly CalendarDay[], stamp: Instant): string =>
  [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Countwheel//Turn of the day//EN',
    'CALSCALE:GREGORIAN',
    ...days.flatMap(day => event(day, stamp)),
    'END:VCALENDAR',
  ]
    .map(line => `${folded(line)}\r\n`)
    .join('')
