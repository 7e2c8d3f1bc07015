import { describe, expect, it } from 'vitest'
import { clockDoubt } from '../../../core/calendar/clock-doubt.ts'
import { workCalendar } from '../../../core/calendar/work.ts'
import { must } from '../must.ts'

const week = [1, 2, 3, 4, 5].map(day => ({ day, from: '09:00', to: '17:00' }))
const calendar = must(workCalendar({ week, holidays: ['2027-03-26', '2027-03-29'] }))
const london = 'Europe/London'

/** The doubt at `now` where the last entry was made at `last`. */
const doubt = (last: string, now: string, zone = london) => clockDoubt({ last, now }, calendar, zone)

// 2027-03-01 is a Monday.
describe('the computer’s clock', () => {
  it('is not doubted at the instant of the last entry, and is a millisecond before it', () => {
    expect(doubt('2027-03-01T09:00:00.000Z', '2027-03-01T09:00:00.000Z')).toBeNull()
    expect(doubt('2027-03-01T09:00:00.000Z', '2027-03-01T08:59:59.999Z')).toBe('behind')
  })

  it('is not doubted on the next day the shop is open, however late', () => {
    expect(doubt('2027-03-01T09:00:00.000Z', '2027-03-02T23:59:59.999Z')).toBeNull()
    expect(doubt('2027-03-05T16:00:00.000Z', '2027-03-08T20:00:00.000Z')).toBeNull()
  })

  it('is doubted once an open day has passed with nothing entered', () => {
    expect(doubt('2027-03-01T09:00:00.000Z', '2027-03-03T00:00:00.000Z')).toBe('ahead')
    expect(doubt('2027-03-05T16:00:00.000Z', '2027-03-09T00:00:00.000Z')).toBe('ahead')
    expect(doubt('2027-03-01T09:00:00.000Z', '2036-03-03T09:00:00.000Z')).toBe('ahead')
  })

  it('is not doubted over a weekend with holidays on both sides of it', () => {
    expect(doubt('2027-03-25T17:00:00.000Z', '2027-03-30T10:00:00.000Z')).toBeNull()
    expect(doubt('2027-03-25T17:00:00.000Z', '2027-03-31T10:00:00.000Z')).toBe('ahead')
  })

  it('is doubted where the only open day is the second of those between', () => {
    expect(doubt('2027-03-06T10:00:00.000Z', '2027-03-09T00:00:00.000Z')).toBe('ahead')
  })

  it('is not doubted within 24 hours, not even where an open day of 23 hours lies between', () => {
    const always = must(
      workCalendar({
        week: [1, 2, 3, 4, 5, 6, 7].map(day => ({ day, from: '09:00', to: '17:00' })),
        holidays: [],
      }),
    )
    // Clocks go forward on Sunday 28 March 2027: 23:50 on Saturday to 00:50 on Monday is 24 hours.
    const doubtAt = (now: string) => clockDoubt({ last: '2027-03-27T23:50:00.000Z', now }, always, london)
    expect(doubtAt('2027-03-28T23:50:00.000Z')).toBeNull()
    expect(doubtAt('2027-03-28T23:50:00.001Z')).toBe('ahead')
  })

  it('goes by the days of the shop’s own time zone', () => {
    // 23:30 on Monday in London is Tuesday morning in Auckland.
    expect(doubt('2027-03-01T23:30:00.000Z', '2027-03-03T23:45:00.000Z')).toBe('ahead')
    expect(doubt('2027-03-01T23:30:00.000Z', '2027-03-03T10:45:00.000Z', 'Pacific/Auckland')).toBeNull()
  })
})
