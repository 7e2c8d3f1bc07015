import type { CivilDate } from '../calendar/civil.ts'

/**
 * The last day on which a paper issued on that day is kept: the end of the year that lies so many years after the one of its issue.
 * (From memory: most countries ask for 6 to 10 years, counted from the end of the year; local law decides.)
 */
export const keptUntil = (issuedOn: CivilDate, years: number): CivilDate =>
  `${String(Number(issuedOn.slice(0, 4)) + years).padStart(4, '0')}-12-31`
