import { describe, expect, it } from 'vitest'
import { icalendar } from '../../../core/calendar/icalendar.ts'

const stamp = '2027-03-01T09:20:00.000Z'
const one = (summary: string) =>
  icalendar([{ uid: 'repair-2201@shop', onDate: '2027-02-28', summary }], stamp)

// RFC 5545: §3.1 lines end in CRLF and are folded at 75 octets; §3.3.11 escapes; §3.6.1 DTEND of a whole day is the next one.
describe('the calendar file', () => {
  it('holds each day as a whole-day entry that ends on the next', () => {
    expect(one('2201 estimated')).toBe(
      [
        'BEGIN:VCALENDAR',
        'VERSION:2.0',
        'PRODID:-//Countwheel//Turn of the day//EN',
        'CALSCALE:GREGORIAN',
        'BEGIN:VEVENT',
        'UID:repair-2201@shop',
        'DTSTAMP:20270301T092000Z',
        'DTSTART;VALUE=DATE:20270228',
        'DTEND;VALUE=DATE:20270301',
        'SUMMARY:2201 estimated',
        'TRANSP:TRANSPARENT',
        'END:VEVENT',
        'END:VCALENDAR',
        '',
      ].join('\r\n'),
    )
  })

  it('escapes what the format would take for its own', () => {
    expect(one('a;b,c\\d\ne')).toContain('SUMMARY:a\\;b\\,c\\\\d\\ne\r\n')
  })

  it('folds long lines at 75 octets without breaking a character, and unfolds to the same words', () => {
    const summary = 'Ł'.repeat(120)
    const file = one(summary)
    for (const line of file.split('\r\n'))
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
    expect(file.replaceAll('\r\n ', '')).toContain(`SUMMARY:${summary}\r\n`)
  })
})
