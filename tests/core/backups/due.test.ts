import { describe, expect, it } from 'vitest'
import { type CopyStanding, copyDue, copyLateDays } from '../../../core/backups/due.ts'

// 2027-03-01 is a Monday; London is at UTC then.
const standing = (some: Partial<CopyStanding>): CopyStanding => ({
  now: '2027-03-01T12:00:00.000Z',
  copiedAt: '2027-03-01T09:00:00.000Z',
  uncopiedSince: '2027-03-01T10:00:00.000Z',
  week: [
    { day: 1, from: '09:00', to: '12:30' },
    { day: 1, from: '13:00', to: '17:00' },
  ],
  timeZone: 'Europe/London',
  ...some,
})
const due = (some: Partial<CopyStanding>) => copyDue(standing(some))

describe('a copy is due', () => {
  it('at the first look of a day, once', () => {
    expect(due({ now: '2027-03-01T00:00:00.000Z', copiedAt: '2027-02-28T23:59:59.999Z' })).toBe('day')
    expect(due({ copiedAt: '2027-03-01T00:00:00.000Z' })).toBeNull()
    expect(due({ copiedAt: null })).toBe('day')
  })

  it('when the shop has closed for the day, and not at the midday break', () => {
    expect(due({ now: '2027-03-01T12:45:00.000Z' })).toBeNull()
    expect(due({ now: '2027-03-01T16:59:59.999Z' })).toBeNull()
    expect(due({ now: '2027-03-01T17:00:00.000Z' })).toBe('evening')
    expect(due({ now: '2027-03-01T19:00:00.000Z', copiedAt: '2027-03-01T16:59:00.000Z' })).toBe('evening')
    expect(due({ now: '2027-03-01T19:00:00.000Z', copiedAt: '2027-03-01T17:00:00.000Z' })).toBeNull()
  })

  it('in the evening by the shop’s own time', () => {
    const summer = { copiedAt: '2027-07-05T08:00:00.000Z' } // a Monday
    expect(due({ ...summer, now: '2027-07-05T15:59:00.000Z' })).toBeNull()
    expect(due({ ...summer, now: '2027-07-05T16:00:00.000Z' })).toBe('evening')
  })

  it('not in the evening of a day on which the shop is shut', () => {
    expect(due({ now: '2027-03-02T19:00:00.000Z', copiedAt: '2027-03-02T09:00:00.000Z' })).toBeNull()
  })

  it('never where every entry stands in a copy', () => {
    expect(due({ copiedAt: '2027-02-01T09:00:00.000Z', uncopiedSince: null })).toBeNull()
  })
})

describe('copies are late', () => {
  const late = (some: Partial<CopyStanding>, days = 2) => copyLateDays(standing(some), days)

  it('from the very day the shop set, counted in days of the calendar', () => {
    expect(late({ copiedAt: '2027-02-28T00:01:00.000Z' })).toBeNull()
    expect(late({ copiedAt: '2027-02-27T23:59:00.000Z' })).toBe(2)
    expect(late({ copiedAt: '2027-02-26T09:00:00.000Z' }, 3)).toBe(3)
    expect(late({ copiedAt: '2027-02-26T09:00:00.000Z' }, 4)).toBeNull()
  })

  it('not where everything stands in the last copy, however old it is', () => {
    expect(late({ copiedAt: '2020-01-01T09:00:00.000Z', uncopiedSince: null })).toBeNull()
  })

  it('by the first entry where there never was a copy', () => {
    expect(late({ copiedAt: null, uncopiedSince: '2027-02-20T09:00:00.000Z' })).toBe(9)
    expect(late({ copiedAt: null, uncopiedSince: '2027-03-01T09:00:00.000Z' })).toBeNull()
  })
})
