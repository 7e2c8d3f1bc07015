import { localTimeProblems } from '../calendar/checks.ts'
import { dayOfMinute, type LocalMinute, type LocalTime, localMinute } from '../calendar/local.ts'
import { dayMinutes } from '../calendar/units.ts'
import { bad, type Checked, good, problem } from '../problems.ts'

const quarterMinutes = 15
const quartersADay = 96

/** Blows on the hour: 12 at noon and midnight. */
const hourBlows = (quarter: number): number => (quarter % 4 === 0 ? (quarter / 4) % 12 || 12 : 0)

/** Notes of a four-quarter chime: 4, 8, 12 and, before the hour is struck, 16 (BK p. 204). */
const chimeNotes = (quarter: number): number => (quarter % 4 || 4) * 4

/**
 * Each pattern as the blows at a quarter hour of the day, 0 at midnight to 95. `hours-half` adds a single blow at
 * the half hour; `ship` is one bell more each half hour of a four-hour watch, from 1 to 8, without dog watches.
 */
const patterns = {
  hours: hourBlows,
  'hours-half': (quarter: number) => (quarter % 4 === 2 ? 1 : hourBlows(quarter)),
  'four-quarter': chimeNotes,
  'four-quarter-hours': (quarter: number) => chimeNotes(quarter) + hourBlows(quarter),
  ship: (quarter: number) => (quarter % 2 === 0 ? (quarter / 2) % 8 || 8 : 0),
} as const

/** What a clock sounds by itself. */
export type StrikePattern = keyof typeof patterns

export const strikePatterns = Object.keys(patterns) as StrikePattern[]

/** The most blows that can have been counted at one time: far above the 28 notes and blows of a four-quarter clock at twelve. Our own bound. */
export const mostBlows = 100

/** The blows at a minute of the day (0 to 1439); 0 between the quarters. */
export const blowsAt = (pattern: StrikePattern, minuteOfDay: number): number =>
  minuteOfDay % quarterMinutes === 0 ? patterns[pattern]((minuteOfDay / quarterMinutes) % quartersADay) : 0

/**
 * Every blow after `from` up to and including `to`. Problems: `date.notALocalTime`, `strike.pattern`,
 * `strike.endsBeforeItBegins`.
 */
export function blowsBetween(pattern: StrikePattern, from: LocalTime, to: LocalTime): Checked<number> {
  const problems = [...localTimeProblems(from, 'from'), ...localTimeProblems(to, 'to')]
  if (!Object.hasOwn(patterns, pattern)) problems.push(problem('strike.pattern', 'pattern'))
  if (problems.length === 0 && to < from) problems.push(problem('strike.endsBeforeItBegins', 'to'))
  if (problems.length > 0) return bad(problems)
  return good(blowsUpTo(pattern, localMinute(to) ?? 0) - blowsUpTo(pattern, localMinute(from) ?? 0))
}

/** Blows since the beginning of day 0, the minute itself included. */
function blowsUpTo(pattern: StrikePattern, at: LocalMinute): number {
  const day = dayOfMinute(at)
  const quarters = Math.floor((at - day * dayMinutes) / quarterMinutes) + 1
  return day * blowsOfQuarters(pattern, quartersADay) + blowsOfQuarters(pattern, quarters)
}

const blowsOfQuarters = (pattern: StrikePattern, quarters: number): number =>
  Array.from({ length: quarters }, (_, quarter) => patterns[pattern](quarter)).reduce((sum, n) => sum + n, 0)
