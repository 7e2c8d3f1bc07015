import type { OpenHours } from '../../core/calendar/opening.ts'

/** One stretch of a day as typed; both empty where there is none. */
export interface Stretch {
  readonly from: string
  readonly to: string
}

/** The stretches of the seven days, Monday first; at least two fields for each. */
export type TypedWeek = readonly (readonly Stretch[])[]

const blank: Stretch = { from: '', to: '' }
const isBlank = ({ from, to }: Stretch) => from === '' && to === ''

/** Midnight at the end of a day: the ledger's `24:00`, which a time field shows as `00:00`. */
const shownEnd = (to: string) => (to === '24:00' ? '00:00' : to)
const keptEnd = (to: string) => (to === '00:00' ? '24:00' : to)

/** The week as it is typed. */
export function typedWeek(week: readonly OpenHours[]): TypedWeek {
  return [1, 2, 3, 4, 5, 6, 7].map(day => {
    const stretches = week
      .filter(hours => hours.day === day)
      .map(({ from, to }) => ({ from, to: shownEnd(to) }))
    return [...stretches, blank, blank].slice(0, Math.max(2, stretches.length))
  })
}

/** The week as it is kept: the stretches that were written. */
export const keptWeek = (week: TypedWeek): OpenHours[] =>
  week.flatMap((stretches, index) =>
    stretches
      .filter(stretch => !isBlank(stretch))
      .map(({ from, to }) => ({ day: index + 1, from, to: keptEnd(to) })),
  )

/** Where the kept week has a stretch: how many written ones stand before it; a place of its own, in no problem's path, while it is blank. */
export function pathOf(week: TypedWeek, day: number, stretch: number): string {
  const one = week[day]?.[stretch] ?? blank
  if (isBlank(one)) return `closed[${day}][${stretch}]`
  const before = [...week.slice(0, day), week[day]?.slice(0, stretch) ?? []]
  return `hours.week[${before.flat().filter(other => !isBlank(other)).length}]`
}

/** The week with one field of a stretch changed. */
export const withStretch = (
  week: TypedWeek,
  day: number,
  stretch: number,
  change: Partial<Stretch>,
): TypedWeek =>
  week.map((stretches, d) =>
    d === day ? stretches.map((one, s) => (s === stretch ? { ...one, ...change } : one)) : stretches,
  )
