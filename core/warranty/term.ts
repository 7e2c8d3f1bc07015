import { dateProblems } from '../calendar/checks.ts'
import { addDays, addMonths, type CivilDate, daysBetween } from '../calendar/civil.ts'
import { unless } from '../checked.ts'
import { type Checked, type Problem, problem } from '../problems.ts'

/** How long a warranty runs. */
export interface TermLength {
  /** Whole months (at most 1200) or days (at most 36525). */
  readonly length: number
  readonly unit: 'months' | 'days'
  /**
   * `same-date`: the last day has the start's date (EU Reg. 1182/71 Art. 3, UK corresponding-date rule).
   * `day-before`: one day earlier, a year less a day.
   */
  readonly convention: 'same-date' | 'day-before'
}

/** A warranty term and the day it is asked about. */
export interface TermInput extends TermLength {
  readonly start: CivilDate
  /** Days added at the end because the clock was in the shop; 0 when left out. */
  readonly pausedDays?: number | undefined
  readonly on: CivilDate
}

/** Where a term stands on a day. `lastDay` is inclusive; `daysLeft` counts the days after `on`, 0 when not covered. */
export interface Term {
  readonly lastDay: CivilDate
  readonly covered: boolean
  readonly daysLeft: number
}

/** The longest term, by its unit: a hundred years. Our own bound. */
const longest = { months: 1200, days: 36_525 }
const latestStart = '9799-12-31'

/**
 * The term's last day and standing. Problems: `date.notADate`, `date.beyondCalendar`, `warranty.length`,
 * `warranty.unit`, `warranty.convention`, `warranty.pausedDays`.
 */
export function warrantyTerm(input: TermInput): Checked<Term> {
  const problems = [...termProblems(input), ...dateProblems(input.on, 'on')]
  return unless(problems, () => {
    const lastDay = addDays(lastDayOf(input.start, input), input.pausedDays ?? 0)
    const covered = input.start <= input.on && input.on <= lastDay
    return { lastDay, covered, daysLeft: covered ? daysBetween(input.on, lastDay) : 0 }
  })
}

/** The last day of a term that begins on `start`, without pauses. */
function lastDayOf(start: CivilDate, { length, unit, convention }: TermLength): CivilDate {
  const same = unit === 'months' ? addMonths(start, length) : addDays(start, length)
  return convention === 'day-before' ? addDays(same, -1) : same
}

/** What is wrong with a term's start and length. */
export function termProblems(term: Omit<TermInput, 'on'>): Problem[] {
  const { start, length, unit, convention, pausedDays = 0 } = term
  const problems = dateProblems(start, 'start')
  if (start > latestStart && problems.length === 0) problems.push(problem('date.beyondCalendar', 'start'))
  if (!Object.hasOwn(longest, unit)) problems.push(problem('warranty.unit', 'unit'))
  else if (!wholeWithin(length, 1, longest[unit]))
    problems.push(problem('warranty.length', 'length', { longest: longest[unit] }))
  if (convention !== 'same-date' && convention !== 'day-before')
    problems.push(problem('warranty.convention', 'convention'))
  if (!wholeWithin(pausedDays, 0, longest.days))
    problems.push(problem('warranty.pausedDays', 'pausedDays', { longest: longest.days }))
  return problems
}

const wholeWithin = (n: number, least: number, most: number): boolean =>
  Number.isInteger(n) && n >= least && n <= most
