import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type KeepingPolicy, keptCopies, usualKeeping } from '../../../core/backups/kept.ts'

const zone = 'Europe/London'
const none: KeepingPolicy = { days: 0, weeks: 0, months: 0, years: 0 }
/** One copy at 18:00 on each of so many days in a row, the last of them 2027-03-31, a Wednesday. */
const evenings = (count: number) =>
  Array.from({ length: count }, (_, n) => new Date(Date.UTC(2027, 2, 31 - n, 17)).toISOString())
const days = (instants: readonly string[]) => instants.map(at => at.slice(0, 10))

describe('which copies are kept', () => {
  it('of the last 14 days one each, and not of the fifteenth', () => {
    const kept = keptCopies(evenings(20), { ...none, days: 14 }, zone)
    expect(kept).toEqual(evenings(14))
  })

  it('of weeks the newest of each, a week beginning on Monday', () => {
    expect(days(keptCopies(evenings(30), { ...none, weeks: 3 }, zone))).toEqual([
      '2027-03-31',
      '2027-03-30', // the last two days keep all
      '2027-03-28',
      '2027-03-21',
    ])
  })

  it('of months and years the newest of each', () => {
    expect(days(keptCopies(evenings(500), { ...none, months: 3 }, zone))).toEqual([
      '2027-03-31',
      '2027-03-30',
      '2027-02-28',
      '2027-01-31',
    ])
    expect(days(keptCopies(evenings(800), { ...none, years: null }, zone))).toEqual([
      '2027-03-31',
      '2027-03-30',
      '2026-12-31',
      '2025-12-31',
    ])
    expect(days(keptCopies(evenings(800), { ...none, years: 2 }, zone)).at(-1)).toBe('2026-12-31')
  })

  it('of the last two days with copies all, so that what was made before an import outlives the evening’s', () => {
    const at = (day: number, hour: number) => new Date(Date.UTC(2027, 2, day, hour)).toISOString()
    const instants = [9, 12, 17].flatMap(hour => [at(1, hour), at(2, hour), at(5, hour)])
    expect(keptCopies(instants, none, zone)).toEqual([
      at(5, 17),
      at(5, 12),
      at(5, 9),
      at(2, 17),
      at(2, 12),
      at(2, 9),
    ])
  })

  it('by the day in the shop, not in Greenwich', () => {
    // 23:30 and 00:30 in London in summer are one day in Greenwich.
    const [before, after] = ['2027-07-01T22:30:00.000Z', '2027-07-01T23:30:00.000Z']
    const later = ['2027-08-01T10:00:00.000Z', '2027-08-02T10:00:00.000Z']
    const kept = (timeZone: string) => keptCopies([before, after, ...later], { ...none, days: 9 }, timeZone)
    expect(kept(zone)).toContain(before)
    expect(kept('UTC')).not.toContain(before)
  })

  const instant = fc
    .integer({ min: 0, max: 20 * 365 * 24 })
    .map(hour => new Date(Date.UTC(2010, 0, 1, hour)).toISOString())
  const count = fc.integer({ min: 0, max: 20 })
  const policy = fc.record({ days: count, weeks: count, months: count, years: fc.option(count) })

  it('always the newest, each only once, and never one that was not there', () => {
    fc.assert(
      fc.property(fc.array(instant), policy, (instants, keeping) => {
        const kept = keptCopies(instants, keeping, zone)
        expect(kept[0]).toBe(instants.toSorted().at(-1))
        expect(new Set(kept).size).toBe(kept.length)
        for (const at of kept) expect(instants).toContain(at)
      }),
    )
  })

  it('the same again when asked again: what was kept is not taken away without a new copy', () => {
    fc.assert(
      fc.property(fc.array(instant), policy, (instants, keeping) => {
        const kept = keptCopies(instants, keeping, zone)
        expect(keptCopies(kept, keeping, zone)).toEqual(kept)
      }),
    )
  })

  it('the others for a copy dated years ahead, as by a wrong clock, takes only what one more copy would', () => {
    fc.assert(
      fc.property(fc.uniqueArray(instant, { minLength: 3, maxLength: 40 }), instants => {
        const before = keptCopies(instants, usualKeeping, zone)
        const after = keptCopies([...before, '2087-01-01T10:00:00.000Z'], usualKeeping, zone)
        const dayCount = new Set(days(before)).size
        if (dayCount < usualKeeping.days) expect(new Set(days(after)).size).toBe(dayCount + 1)
        expect(after[0]).toBe('2087-01-01T10:00:00.000Z')
      }),
    )
  })
})
